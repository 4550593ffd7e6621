/** One shelter with some facts changed, worked out: the figures that exploring compares. */
import { evaluate } from '@tautline/checks';
import { type Axes, axesOf, editsAt, sourcesOf, type VariantFigures, variantFigures } from '@tautline/review';
import { applyEdits, resolveShelter, type SpecWorld } from '@tautline/shelter';
import { materialsExact } from '@tautline/takeoff';
import { buyingOf } from '../buying.ts';
import type { CommandArguments } from '../commands/command.ts';
import { oneShelter } from '../one-shelter.ts';
import { loadSolver } from '../solver.ts';

export interface VariantTask {
  readonly type: 'variants';
  /** Tells one run of the command from another, between which the file may change. */
  readonly run: number;
  readonly file: string;
  readonly shelter: string;
  /** Places in the grid of its `vary` facts. */
  readonly indices: readonly number[];
  readonly flags: CommandArguments['flags'];
  readonly on: string;
}

export async function figuresOfVariants({
  file,
  shelter,
  run,
  indices,
  flags,
  on,
}: VariantTask): Promise<VariantFigures[]> {
  const { world, axes } = await varied(file, shelter, run);
  const results: VariantFigures[] = [];
  for (const index of indices) results.push(await figuresAt(index, shelter, world, axes, flags, on));
  return results;
}

interface Varied extends Axes {
  readonly world: SpecWorld;
}

let last: { readonly key: string; readonly varied: Promise<Varied> } | undefined;

/** The shelter as written and what it says to vary; kept, since a thread is asked for many variants of one. */
function varied(file: string, name: string, run: number): Promise<Varied> {
  const key = `${run}\n${file}\n${name}`;
  if (last?.key !== key) last = { key, varied: readVaried(file, name) };
  return last.varied;
}

async function readVaried(file: string, name: string): Promise<Varied> {
  const { loaded } = await oneShelter(file, name);
  const { shelter } = sourcesOf(loaded);
  return { world: loaded.world, ...(shelter ? axesOf(shelter) : { axes: [], problems: [] }) };
}

async function figuresAt(
  index: number,
  name: string,
  world: SpecWorld,
  axes: Axes['axes'],
  flags: CommandArguments['flags'],
  on: string,
): Promise<VariantFigures> {
  const changed: SpecWorld = { definitions: applyEdits(world.definitions, editsAt(axes, index)) };
  const { shelter, problems } = resolveShelter(name, changed);
  if (shelter === undefined) {
    const why = problems.find(({ severity }) => severity === 'error')?.message ?? 'it cannot be worked out';
    return { index, problem: why, errors: 0, warnings: 0 };
  }
  const { options } = await buyingOf(changed, { paths: [], flags });
  return variantFigures(index, evaluate(shelter, { on }), await materialsExact(shelter, loadSolver, options));
}
