/** Pieces of HTML that cannot be mixed up with plain text: what is put into a template is escaped. */

export interface Markup {
  readonly markup: string;
}

type Part = Markup | string | number | undefined | false | readonly Part[];

export function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

function put(part: Part): string {
  if (part === undefined || part === false) return '';
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return `${part}`;
  return 'markup' in part ? part.markup : part.map(put).join('');
}

/** HTML from a template; strings in it are text, `Markup` is kept, nothing stands for undefined and false. */
export function html(pieces: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return { markup: pieces.reduce((text, piece, index) => `${text}${put(parts[index - 1])}${piece}`) };
}

/** HTML made by somebody who has escaped it already, such as the SVG writer. */
export const ready = (markup: string): Markup => ({ markup });

export function list(items: readonly Part[], kind: 'ul' | 'ol' = 'ul'): Markup {
  const rows = items.map((item) => html`<li>${item}</li>\n`);
  return kind === 'ul' ? html`<ul>\n${rows}</ul>\n` : html`<ol>\n${rows}</ol>\n`;
}

/** Text whose numbers stay on one line with their units and counts: `6 x 3.048 m`. */
export const kept = (text: string): string =>
  text.replace(/ x (?=\d)/g, '\u00a0x\u00a0').replace(/(\d) (?=(?:mm|m|in|ft|kg)\b)/g, '$1\u00a0');

/** A table; columns named in `right` hold numbers. */
export function table(
  head: readonly string[],
  rows: readonly (readonly Part[])[],
  right: readonly number[] = [],
  kind = '',
): Markup {
  const mark = (index: number) => (right.includes(index) ? ready(' class="n"') : '');
  const heads = head.map((cell, index) => html`<th${mark(index)}>${cell}</th>`);
  const body = rows.map(
    (row) => html`<tr>${row.map((cell, index) => html`<td${mark(index)}>${cell}</td>`)}</tr>\n`,
  );
  return html`<table${kind === '' ? undefined : html` class="${kind}"`}>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${body}</tbody>\n</table>\n`;
}
