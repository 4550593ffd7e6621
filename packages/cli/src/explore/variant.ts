/** One shelter with some facts changed, worked out: the figures that exploring compares. */
import { evaluate } from '@tautline/checks';
import { type Axes, axesOf, editsAt, type FirstFailure, governingOf, sourcesOf } from '@tautline/review';
import { applyEdits, clearHeightAt, resolveShelter, type Shelter, type SpecWorld } from '@tautline/shelter';
import { materialsExact } from '@tautline/takeoff';
import { buyingOf } from '../buying.ts';
import type { CommandArguments } from '../commands/command.ts';
import { firstFailureOf } from '../first-failure.ts';
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

/** Plain data; what could not be worked out is absent, and `problem` says why where nothing could. */
export interface VariantFigures {
  readonly index: number;
  readonly problem?: string;
  readonly errors: number;
  readonly warnings: number;
  readonly governing?: { readonly id: string; readonly utilisation: number };
  readonly firstFailure?: FirstFailure;
  /** m, at the place `headroomPlace` tells. */
  readonly headroom?: number;
  readonly cost?: {
    readonly total: number;
    readonly complete: boolean;
    readonly currency?: string;
    /** What has no price or could not be counted. */
    readonly missing: readonly string[];
  };
}

export async function variantFigures({
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
  const evaluation = evaluate(shelter, { on });
  const counted = (level: string): number =>
    evaluation.findings.filter(({ severity }) => severity === level).length;
  const governing = governingOf(evaluation.findings);
  const firstFailure = firstFailureOf(evaluation);
  const headroom = clearHeightAt(shelter, headroomPlace(shelter));
  const { cost, currency, gaps } = await materialsExact(
    shelter,
    loadSolver,
    (await buyingOf(changed, { paths: [], flags })).options,
  );
  return {
    index,
    errors: counted('error'),
    warnings: counted('warning'),
    ...(governing === undefined
      ? {}
      : { governing: { id: governing.id, utilisation: governing.utilisation } }),
    ...(firstFailure === undefined ? {} : { firstFailure }),
    ...(headroom === undefined ? {} : { headroom }),
    ...(cost.shares.length === 0
      ? {}
      : {
          cost: {
            total: cost.total,
            complete: cost.complete,
            missing: [...cost.missing, ...cost.tooLong, ...gaps.map(({ what }) => withoutCounts(what))],
            ...(currency === undefined ? {} : { currency }),
          },
        }),
  };
}

/** What lacks a price is the same thing in every variant, however many of it there are. */
const withoutCounts = (what: string): string => what.replace(/\b\d+ /g, '');

/** Distance from the left side at which headroom is compared, m: where the spec first requires some, or the middle. */
export function headroomPlace(shelter: Shelter): number {
  const required = shelter.requirements.find(({ subject }) => subject === 'headroom');
  return required?.at ?? shelter.width / 2;
}
