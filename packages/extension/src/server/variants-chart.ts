/** What exploring found, as cost against the gust at which the first part fails. Pure. */
import { type Drawing, scatterChart } from '@tautline/drawing';
import type { Explored, ExploredVariant } from '@tautline/language/protocol';
import type { System } from '@tautline/quantity';

/** The units that the scale of gusts is round in, m/s. */
const speedUnit: Readonly<Record<System, number>> = { metric: 1, us: 0.44704 };

/** The chart, or why there is none. */
export function variantsChart({ shelter, variants, axes }: Explored, system: System): Drawing | string {
  const drawn = variants.filter(
    (one): one is ExploredVariant & { cost: number; gust: number } =>
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
