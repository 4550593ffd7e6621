/** A report of paragraphs, tables and lists, told once and set out as text, Markdown or a page. */
import { html, type Markup, table as markupTable, ready } from '@tautline/book';
import { columns, markdownRow, markdownText } from '@tautline/review';

export type Part =
  | string
  | { readonly heading: string }
  | { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  /** Lines whose indents matter. */
  | { readonly lines: readonly string[] };

export interface Document {
  readonly title: string;
  readonly parts: readonly Part[];
}

export const documentForms = ['text', 'markdown', 'html', 'json'] as const;

export function documentText({ title, parts }: Document): string {
  const blocks = parts.map((part) => {
    if (typeof part === 'string') return [part];
    if ('heading' in part) return ['', part.heading];
    if ('lines' in part) return part.lines.map((line) => `  ${line}`);
    return ['', ...columns([part.head, ...part.rows]), ''];
  });
  return `${[title, '', ...blocks.flat()].join('\n')}\n`;
}

export function documentMarkdown({ title, parts }: Document): string {
  const blocks = parts.map((part) => {
    if (typeof part === 'string') return [markdownText(part)];
    if ('heading' in part) return [`#### ${markdownText(part.heading)}`];
    // Indents are told by the depth of the list.
    if ('lines' in part)
      return part.lines.map((line) => `${/^ */.exec(line)?.[0] ?? ''}- ${markdownText(line.trim())}`);
    return [
      markdownRow(part.head.map(markdownText)),
      markdownRow(part.head.map(() => '---')),
      ...part.rows.map((row) => markdownRow(row.map(markdownText))),
    ];
  });
  return `${[`### ${markdownText(title)}`, ...blocks.map((lines) => lines.join('\n'))].join('\n\n')}\n`;
}

/** Complete HTML without scripts and without anything fetched. */
export function documentPage({ title, parts }: Document): string {
  const blocks = parts.map((part): Markup => {
    if (typeof part === 'string') return html`<p>${part}</p>\n`;
    if ('heading' in part) return html`<h2>${part.heading}</h2>\n`;
    if ('lines' in part) return html`<pre>${part.lines.join('\n')}</pre>\n`;
    return markupTable(part.head, part.rows);
  });
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${ready(style)}</style>
</head>
<body>
<h1>${title}</h1>
${blocks}</body>
</html>
`.markup;
}

const style = `
body { font: 16px/1.5 system-ui, sans-serif; color: #1b1f24; background: #fff; margin: 0 auto; max-width: 78rem; padding: 1.5rem; }
h1 { font-size: 1.5rem; } h2 { font-size: 1.15rem; margin: 1.5rem 0 .25rem; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: .35rem .6rem; border-bottom: 1px solid #c9d1d9; font-weight: normal; }
thead th { font-weight: 700; } pre { white-space: pre-wrap; } @media print { tr { break-inside: avoid; } }
`;
