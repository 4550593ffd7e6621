/** ISO days, reckoned without clock or time zone. */

/** Throws RangeError for what is no day. */
function utc(day: string): Date {
  const date = new Date(`${day}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(date.getTime())) {
    throw new RangeError(`'${day}' is no day like 2027-03-01`);
  }
  return date;
}

const iso = (date: Date): string => date.toISOString().slice(0, 10);

/** The day so many seconds later, whole days only. Throws RangeError for what is no day. */
export function laterBy(day: string, seconds: number): string {
  const date = utc(day);
  date.setUTCDate(date.getUTCDate() + Math.floor(seconds / 86_400));
  return iso(date);
}

/**
 * The same day of the month so many months later, or the last of a shorter month. Throws RangeError for what is
 * no day.
 */
export function monthsLater(day: string, months: number): string {
  const date = utc(day);
  const wanted = date.getUTCDate();
  date.setUTCDate(1);
  date.setUTCMonth(date.getUTCMonth() + months);
  const last = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 0)).getUTCDate();
  date.setUTCDate(Math.min(wanted, last));
  return iso(date);
}

/** Whether a text is a day of the calendar, written like 2027-03-01. */
export const isDay = (day: string): boolean => {
  try {
    return iso(utc(day)) === day;
  } catch {
    return false;
  }
};
