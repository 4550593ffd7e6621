/** Texts in quotes and dates, as values. */

/** The text between the quotes; a backslash keeps the next character. */
export function textOf(literal: string): string {
  const body =
    literal.endsWith('"') && literal.length > 1 && closed(literal) ? literal.slice(1, -1) : literal.slice(1);
  return body.replace(/\\(.)/g, '$1');
}

/** Whether a text literal has its closing quote. */
export function closed(literal: string): boolean {
  return /^"(?:\\[^\n\r]|[^"\\\n\r])*"$/.test(literal);
}

/** A text as a literal of the language. Line breaks become spaces: a fact stays on its line. */
export function quoted(text: string): string {
  return `"${text.replace(/\s*[\r\n]+\s*/g, ' ').replace(/["\\]/g, '\\$&')}"`;
}

/** Whether a written date is a day of the calendar. */
export function isDay(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  const time = new Date(Date.UTC(year, month - 1, day));
  return year > 0 && time.getUTCMonth() === month - 1 && time.getUTCDate() === day;
}

/** The words of a doc comment, without its marks. */
export function commentText(comment: string): string {
  return comment
    .replace(/^\/\*+/, '')
    .replace(/\*+\/$/, '')
    .split(/\r?\n/)
    .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd())
    .join('\n')
    .trim();
}
