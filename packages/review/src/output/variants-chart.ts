/** What exploring found, as cost against the gust at which the first part fails. */
import { type Drawing, scatterChart } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import type { Choice } from '../vary/choices.ts';
import { tellChoice } from './explored.ts';

/** A variant as plain data: numbers in SI beside their words, absent where there is nothing to say. */
export interface PlainVariant {
  /** As a reader counts, from 1. */
  readonly number: number;
  /** One for each axis, in words. */
  readonly values: readonly string[];
  readonly verdict: string;
  /** Nothing fails, and no other such variant is at least as good in every aim. */
  readonly best: boolean;
  readonly holds: boolean;
  readonly cost?: number;
  readonly costText?: string;
  readonly gust?: number;
  readonly gustText?: string;
  readonly headroom?: number;
  readonly headroomText?: string;
  /** Share of its limit that the most used part is used up by. */
  readonly used?: number;
  readonly usedText?: string;
}

export function plainVariant(choice: Choice, best: boolean, system: System): PlainVariant {
  const { number, figures } = choice;
  const words = tellChoice(choice, system);
  const { cost, firstFailure, headroom, governing } = figures;
  return {
    number,
    values: words.values,
    verdict: words.verdict,
    best,
    holds: figures.errors === 0 && figures.problem === undefined,
    ...(cost === undefined ? {} : { cost: cost.total, costText: words.cost }),
    ...(firstFailure === undefined ? {} : { gust: firstFailure.gust, gustText: words.gust }),
    ...(headroom === undefined ? {} : { headroom, headroomText: words.headroom }),
    ...(governing === undefined ? {} : { used: governing.utilisation, usedText: words.used }),
  };
}

export interface Charted {
  readonly shelter: string;
  /** Names of the facts that vary. */
  readonly axes: readonly string[];
  readonly variants: readonly PlainVariant[];
}

/** The units that the scale of gusts is round in, m/s. */
const speedUnit: Readonly<Record<System, number>> = { metric: 1, us: 0.44704 };

/** The chart, or why there is none. */
export function variantsChart({ shelter, variants, axes }: Charted, system: System): Drawing | string {
  const drawn = variants.filter(
    (one): one is PlainVariant & { cost: number; gust: number } =>
      one.cost !== undefined && one.gust !== undefined,
  );
  if (drawn.length === 0) {
    return variants.some(({ gust }) => gust !== undefined)
      ? 'No chart: without prices there is no cost to draw. Import a price list.'
      : 'No chart: no variant has a gust at which a part fails.';
  }
  const left = variants.length - drawn.length;
  return scatterChart(
    {
      title: `${shelter}: what may vary`,
      description: `Cost against the gust at which the first part fails, for ${drawn.length} variants.`,
      x: { label: 'cost', kind: 'money', unit: 1 },
      y: { label: 'gust at which the first part fails', kind: 'speed', unit: speedUnit[system] },
      points: drawn.map((one) => ({
        part: `variant/${one.number}`,
        name: String(one.number),
        label: `${one.number}: ${axes.map((axis, at) => `${axis} ${one.values[at]}`).join(', ')}; ${one.costText}, ${one.gustText}, ${one.verdict}`,
        x: one.cost,
        y: one.gust,
        mark: one.best ? 'front' : one.holds ? 'holds' : 'fails',
      })),
      notes: left === 0 ? [] : [`${left} without a cost or a gust are left out.`],
    },
    { system },
  );
}
