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

/** The system that more quantities of a text are written in; undefined when there are as many of both, or none. */
export function writtenSystem(text: string): System | undefined {
  const plain = text.replace(asides, ' ');
  let us = 0;
  let metric = 0;
  let read = 0;
  for (const { index } of plain.matchAll(/(?<![\w.-])[\d.]/g)) {
    const quantity = index < read ? undefined : scanQuantity(plain, index);
    read = quantity?.end ?? read;
    for (const { unit } of quantity?.parts ?? []) {
      const system = unit === undefined ? undefined : systemOfUnit(unit);
      if (system === 'us') us += 1;
      if (system === 'metric') metric += 1;
    }
  }
  return us === metric ? undefined : us > metric ? 'us' : 'metric';
}
