/** The dates as a calendar file, RFC 5545, by the library ical-generator. */
import ical, { ICalEventRepeatingFreq } from 'ical-generator';
import type { DueDate } from './dates.ts';

/** Text of an .ics file with one all-day entry a date. `on` is the day stamped on every entry, ISO. */
export function calendarText(name: string, dates: readonly DueDate[], on: string): string {
  const calendar = ical({ name, prodId: { company: 'tautline', product: 'build book', language: 'EN' } });
  for (const { id, day, what, why, everyMonths } of dates) {
    calendar.createEvent({
      id: `${id}.${name.replace(/[^A-Za-z0-9-]/g, '-')}@tautline`,
      stamp: new Date(`${on}T00:00:00Z`),
      start: new Date(`${day}T00:00:00Z`),
      timezone: 'UTC',
      allDay: true,
      summary: `${what} (${name})`,
      description: why,
      ...(everyMonths === undefined
        ? {}
        : { repeating: { freq: ICalEventRepeatingFreq.MONTHLY, interval: everyMonths } }),
    });
  }
  return calendar.toString();
}
