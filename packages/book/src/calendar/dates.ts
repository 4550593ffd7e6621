/** What falls due, and when, as entries of a calendar. */
import { messageText } from '@tautline/checks';
import { monthsLater, type System } from '@tautline/quantity';
import type { KeepingDuty } from '../input.ts';

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

/** Months between two looks, and between two thorough ones: common practice, no source. */
const LOOK = 3;
const YEARLY = 12;

/**
 * Every duty that has a day, and the inspections that come back, by day. An inspection never falls before
 * `on`, the day the book is made: one that is overdue is due on that day.
 */
export function dueDates(duties: readonly KeepingDuty[], on: string, system: System): readonly DueDate[] {
  const dated = duties.flatMap((duty): readonly DueDate[] => {
    if (duty.day === undefined || duty.kind === 'inspection') return [];
    const { kind, part, day, what, why } = duty;
    return [
      {
        id: `${kind}-${part.replace(/[^A-Za-z0-9-]/g, '-')}`,
        day,
        what: capital(what),
        why: messageText(why, system),
      },
    ];
  });
  const next = duties.find((duty) => duty.kind === 'inspection')?.day ?? monthsLater(on, LOOK);
  const looks: readonly DueDate[] = [
    {
      id: 'inspect',
      day: next < on ? on : next,
      what: 'Go through the inspection list',
      why: `every ${LOOK} months (common practice, no source)`,
      everyMonths: LOOK,
    },
    {
      id: 'inspect-year',
      day: monthsLater(on, YEARLY),
      what: 'Yearly inspection: ground lines, rust, wood, plastic',
      why: 'once a year (common practice, no source)',
      everyMonths: YEARLY,
    },
  ];
  return [...dated, ...looks].sort((a, b) => a.day.localeCompare(b.day) || a.id.localeCompare(b.id));
}

/** What nobody can put in a calendar yet, and what would have to be said. */
export const undated = (
  duties: readonly KeepingDuty[],
  system: System,
): readonly { readonly what: string; readonly why: string }[] =>
  duties
    .filter((duty) => duty.day === undefined && duty.kind !== 'inspection')
    .map((duty) => ({ what: capital(duty.what), why: messageText(duty.why, system) }));

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
