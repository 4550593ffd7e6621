/** Every variant that a shelter's `vary` facts allow, worked out one after the other. Runs in the worker. */
import { cautionLine } from '@tautline/book/cautions';
import { evaluate } from '@tautline/checks';
import type { Explored } from '@tautline/language/protocol';
import { countedFor, type Job } from '@tautline/language/server';
import type { System } from '@tautline/quantity';
import {
  axesOf,
  choicesOf,
  editsAt,
  exploredMarkdown,
  gridSize,
  headroomPlace,
  heldFixed,
  mostVariants,
  plainVariant,
  sourcesOf,
  type VariantFigures,
  variantFigures,
} from '@tautline/review';
import { applyEdits, resolveShelter, type SpecWorld } from '@tautline/shelter';
import { variedMark } from './varied.ts';

/** Name of the job in the worker. */
export const exploreJob = 'explore';

export interface ExploreInput {
  readonly shelter: string;
  readonly file: string;
  readonly system: System;
  readonly on?: string;
}

export type ExploreOutput = Omit<Explored, 'version'> | { readonly why: string };

/** Gives `ExploreOutput`; when it is stopped, of what was done so far. */
export const explore: Job = ([world], input, { cancelled, progress }): ExploreOutput => {
  const { shelter: name, file, system, on } = input as ExploreInput;
  const source = world && sourcesOf({ name, world }).shelter;
  const { shelter } = world ? resolveShelter(name, world) : {};
  if (!world || !source || !shelter) return { why: `${name} cannot be worked out as it is now.` };
  const { axes, problems } = axesOf(source);
  const [problem] = problems;
  if (problem !== undefined) return { why: `${problem}.` };
  if (axes.length === 0)
    return {
      why: `${name} says nothing to vary. Add a line such as \`vary bows spaced from 3 ft to 5 ft by 6 in\`.`,
    };
  const size = gridSize(axes);
  if (size > mostVariants)
    return {
      why: `${size} combinations are more than the ${mostVariants} that can be tried: take larger steps.`,
    };
  const figures: VariantFigures[] = [];
  for (let index = 0; index < size && !cancelled(); index += 1) {
    progress(index / size, `variant ${index + 1} of ${size}`);
    figures.push(
      figuresAt(
        index,
        name,
        { ...world, definitions: applyEdits(world.definitions, editsAt(axes, index)) },
        on,
      ),
    );
  }
  if (figures.length === 0) return { why: 'Stopped before the first variant was done.' };
  const choices = choicesOf(axes, figures);
  const explored = {
    shelter: name,
    file,
    axes,
    choices,
    of: size,
    heldFixed: heldFixed(shelter, axes, on, system),
    headroomAt: headroomPlace(shelter),
  };
  return {
    shelter: name,
    varied: variedMark(name, world) ?? '',
    axes: axes.map(({ label }) => label),
    aims: choices.aims,
    of: size,
    variants: choices.all.map((choice) => plainVariant(choice, choices.front.includes(choice), system)),
    markdown: exploredMarkdown(explored, system, cautionLine),
  };
};

function figuresAt(index: number, name: string, world: SpecWorld, on: string | undefined): VariantFigures {
  const { shelter, problems } = resolveShelter(name, world);
  if (shelter === undefined) {
    const why = problems.find(({ severity }) => severity === 'error')?.message ?? 'it cannot be worked out';
    return { index, problem: why, errors: 0, warnings: 0 };
  }
  const evaluation = evaluate(shelter, on === undefined ? {} : { on });
  return variantFigures(index, evaluation, countedFor(shelter, world));
}
