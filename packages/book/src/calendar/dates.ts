/** What falls due, and when: renewals from the life of what was put on, inspections and promises. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { isDay, laterBy, monthsLater } from './days.ts';

export interface DueDate {
  /** Same shelter, same id: a calendar that is read again moves the entry instead of doubling it. */
  readonly id: string;
  /** ISO */
  readonly day: string;
  readonly what: string;
  readonly why: string;
  /** Comes back every so many months. */
  readonly everyMonths?: number;
}

/** Every date of a shelter, by day. `on` is the day the book is made, and stands in where nothing says when a cover went on. */
export function dueDates(shelter: Shelter, on: string, system: System): readonly DueDate[] {
  const renewals = shelter.covers.map((cover): DueDate => {
    const { skin } = cover;
    const said = cover.installed !== undefined && isDay(cover.installed);
    const from = said && cover.installed !== undefined ? cover.installed : on;
    return {
      id: `renew-${cover.id}`,
      day: laterBy(from, skin.life),
      what: `Renew the ${skin.title} of the ${cover.place}`,
      why: `lasts about ${format(skin.life, 'time', system)}, ${said ? `on since ${from}` : `counted from ${from}: the spec does not say when it went on`}`,
    };
  });
  const promises = shelter.acceptances
    .filter((one) => one.until !== undefined && isDay(one.until))
    .map(
      (one): DueDate => ({
        id: `accepted-${one.check}`,
        day: one.until as string,
        what: `Look again at what was accepted: ${one.check}`,
        why: one.because,
      }),
    );
  const looks: readonly DueDate[] = [
    {
      id: 'inspect',
      day: monthsLater(on, 3),
      what: 'Go through the inspection list',
      why: 'every three months (common practice, no source)',
      everyMonths: 3,
    },
    {
      id: 'inspect-year',
      day: monthsLater(on, 12),
      what: 'Yearly inspection: ground lines, rust, wood, plastic',
      why: 'once a year (common practice, no source)',
      everyMonths: 12,
    },
  ];
  return [...renewals, ...promises, ...looks].sort(
    (a, b) => a.day.localeCompare(b.day) || a.id.localeCompare(b.id),
  );
}
