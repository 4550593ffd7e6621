/** Whether a text speaks in metric or in US units. */
import { kinds, type System } from '@tautline/quantity';
import { scanQuantity } from './quantity-text.ts';

const usUnits = new Set(Object.values(kinds).flatMap((kind) => kind.us.map(({ unit }) => unit)));
const metricUnits = new Set(Object.values(kinds).flatMap((kind) => kind.metric.map(({ unit }) => unit)));

/** The system a unit belongs to; undefined for one that both use, or neither. */
export function systemOfUnit(unit: string): System | undefined {
  const us = usUnits.has(unit);
  return us === metricUnits.has(unit) ? undefined : us ? 'us' : 'metric';
}

/** Comments and texts in quotes: what stands in them measures nothing. */
const asides = /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:[^"\\\n]|\\.)*"/g;

const lengthUnits = new Set([...kinds.length.us, ...kinds.length.metric].map(({ unit }) => unit));

/**
 * The system a text is written in: that of most of its lengths, which people give in their own units while a gust
 * or a pull may come from a data sheet; of most quantities where lengths do not tell. Undefined when nothing does.
 */
export function writtenSystem(text: string): System | undefined {
  const plain = text.replace(asides, ' ');
  const lengths = { us: 0, metric: 0 };
  const all = { us: 0, metric: 0 };
  let read = 0;
  for (const { index } of plain.matchAll(/(?<![\w.-])[\d.]/g)) {
    if (index < read) continue;
    const quantity = scanQuantity(plain, index);
    read = quantity?.end ?? read;
    const unit = quantity?.parts[0]?.unit;
    const system = unit === undefined ? undefined : systemOfUnit(unit);
    if (unit === undefined || system === undefined) continue;
    all[system] += 1;
    if (lengthUnits.has(unit)) lengths[system] += 1;
  }
  return more(lengths) ?? more(all);
}

function more({ us, metric }: Readonly<Record<System, number>>): System | undefined {
  return us === metric ? undefined : us > metric ? 'us' : 'metric';
}
