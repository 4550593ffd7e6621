/** The outcome of exploring: every variant with its values, and those that no other beats. */
import { measuredText } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { SpecValue } from '@tautline/shelter';
import type { Axis } from './axes.ts';
import type { VariantFigures } from './figures.ts';
import { type Aim, front } from './front.ts';
import { valuesAt } from './grid.ts';

export interface Choice {
  /** As a reader counts, from 1: what `--write` takes. */
  readonly number: number;
  /** One for each axis. */
  readonly values: readonly SpecValue[];
  readonly figures: VariantFigures;
}

export interface Choices {
  readonly all: readonly Choice[];
  /** Choices in which nothing fails and that no other such choice beats in every aim. */
  readonly front: readonly Choice[];
  /** Names of the aims, e.g. `least cost`. */
  readonly aims: readonly string[];
  /** Choices whose cost lacks a price that others have: they cannot be compared by it. */
  readonly unpriced: readonly Choice[];
  /** What they lack. */
  readonly lacking: readonly string[];
}

const gust: Aim<Choice> = {
  name: 'highest first-failure gust',
  better: 'more',
  of: ({ figures }) => figures.firstFailure?.gust,
};
const headroom: Aim<Choice> = {
  name: 'most headroom',
  better: 'more',
  of: ({ figures }) => figures.headroom,
};
/** Stands in where no first-failure gust is known. */
const instead: Aim<Choice> = {
  name: 'least used of what governs',
  better: 'less',
  of: ({ figures }) => figures.governing?.utilisation,
};

export function choicesOf(axes: readonly Axis[], figures: readonly VariantFigures[]): Choices {
  const all = figures.map(
    (one): Choice => ({ number: one.index + 1, values: valuesAt(axes, one.index), figures: one }),
  );
  const holding = all.filter(({ figures: { errors, problem } }) => errors === 0 && problem === undefined);
  const known = lackedByAll(holding);
  const comparable = ({ figures: { cost: one } }: Choice): boolean =>
    one?.missing.every((title) => known.has(title)) === true;
  const cost: Aim<Choice> = {
    name: 'least cost',
    better: 'less',
    of: (choice) => (comparable(choice) ? choice.figures.cost?.total : undefined),
  };
  const strength = all.some((choice) => gust.of(choice) !== undefined) ? gust : instead;
  // An aim that no choice has a figure for tells nothing apart.
  const used = [cost, strength, headroom].filter(({ of }) =>
    holding.some((choice) => of(choice) !== undefined),
  );
  const unpriced = holding.filter((choice) => choice.figures.cost !== undefined && !comparable(choice));
  return {
    all,
    front: front(holding, used),
    aims: used.map(({ name }) => name),
    unpriced,
    lacking: [...new Set(unpriced.flatMap(({ figures: { cost: one } }) => one?.missing ?? []))].filter(
      (title) => !known.has(title),
    ),
  };
}

/** What no choice has a price for: it is missing from every cost alike. */
function lackedByAll(choices: readonly Choice[]): ReadonlySet<string> {
  const lists = choices.flatMap(({ figures }) => (figures.cost ? [new Set(figures.cost.missing)] : []));
  return new Set([...(lists[0] ?? [])].filter((title) => lists.every((list) => list.has(title))));
}

export function valueText(value: SpecValue | undefined, system: System): string {
  if (value?.type === 'quantity') return measuredText({ value: value.si, kind: value.kind }, system);
  return value?.type === 'item' ? value.id : '';
}
