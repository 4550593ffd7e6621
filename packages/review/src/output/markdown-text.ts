/** Text of a spec inside Markdown: no markup, no mention of a person and no link to an issue comes of it. */
export function markdownText(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/[\\`*_[\]|~#@!]/g, (mark) => `&#${mark.charCodeAt(0)};`)
    .replace(/:\/\//g, '&#58;//')
    .replace(/\s+/g, ' ');
}

/** A line of a Markdown table; the cells are Markdown already. */
export const markdownRow = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
