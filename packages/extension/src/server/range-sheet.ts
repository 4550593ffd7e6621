/** What drawing and takeoff put on the sheet of shelters side by side. Pure. */
import { rangeParts, rangePlanView } from '@tautline/drawing';
import { countedFor, type Drawn, type Sheets } from '@tautline/language/server';
import { format } from '@tautline/quantity';
import type { Range } from '@tautline/shelter';
import { costFact, currencyOf, drawn, materialRows } from './sheet-data.ts';

export const drawRange: NonNullable<Sheets['drawRange']> = (
  { range },
  world,
  system,
  { wide } = {},
): Drawn => {
  const m = (si: number): string => format(si, 'length', system);
  const counted = countedFor(range, world);
  const currency = currencyOf(world);
  const length = Math.max(...range.places.map((place) => place.shelter.length));
  return {
    drawings: [drawn('plan', rangePlanView(range, { system, ...(wide === undefined ? {} : { wide }) }))],
    parts: partsOf(range, m),
    materials: materialRows(counted, currency, system),
    facts: [
      { label: 'Shelters', value: String(range.places.length) },
      { label: 'All together', value: `${m(range.width)} by ${m(length)}` },
      { label: 'Ground under cover', value: format(counted.cost.protectedArea, 'area', system) },
      ...costFact(counted, currency, system),
    ],
  };
};

/** The range, what stands in it line by line, and the ties. */
function partsOf({ origin, places, gap, tie }: Range, m: (si: number) => string): Drawn['parts'] {
  const lines = new Map<string, Drawn['parts'][number]>();
  for (const { id, origin: line, shelter } of places) {
    const count = places.filter((one) => one.id === id).length;
    lines.set(id, { id, title: `${count} of ${shelter.name}`, origin: line });
  }
  return [
    { id: rangeParts.whole, title: `${places.length} shelters, ${m(gap)} apart`, origin },
    ...lines.values(),
    ...(tie === undefined
      ? []
      : [
          {
            id: rangeParts.ties,
            title: `Ties of ${tie.member.title}, ${m(tie.spacing)} apart`,
            origin: tie.origin,
          },
        ]),
  ];
}
