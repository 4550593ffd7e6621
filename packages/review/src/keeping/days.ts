/** ISO days, reckoned without clock or time zone. */

const utc = (day: string): Date => new Date(`${day}T00:00:00Z`);
const iso = (date: Date): string => date.toISOString().slice(0, 10);

/** The day so many seconds later, whole days only. */
export function laterBy(day: string, seconds: number): string {
  const date = utc(day);
  date.setUTCDate(date.getUTCDate() + Math.floor(seconds / 86_400));
  return iso(date);
}

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
