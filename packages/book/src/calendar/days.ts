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

/** The same day of the month so many months later, or the last of a shorter month. */
export function monthsLater(day: string, months: number): string {
  const date = utc(day);
  const wanted = date.getUTCDate();
  date.setUTCDate(1);
  date.setUTCMonth(date.getUTCMonth() + months);
  const last = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 0)).getUTCDate();
  date.setUTCDate(Math.min(wanted, last));
  return iso(date);
}

export const isDay = (day: string): boolean => {
  try {
    return iso(utc(day)) === day;
  } catch {
    return false;
  }
};
