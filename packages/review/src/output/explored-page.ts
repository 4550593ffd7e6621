/** What exploring tells as one page: the chart, then every variant in a table. */
import { toSvg } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import { conclusions, type Explored, rowsOf, stoppedAt } from './explored.ts';
import { escaped, htmlPage } from './html.ts';
import { plainVariant, variantsChart } from './variants-chart.ts';

/** Complete HTML without scripts and without anything fetched. `caution` is the line that every report carries. */
export function exploredPage(explored: Explored, system: System, caution: string): string {
  const { shelter, file, axes, choices } = explored;
  const variants = choices.all.map((choice) => plainVariant(choice, choices.front.includes(choice), system));
  const chart = variantsChart({ shelter, axes: axes.map(({ label }) => label), variants }, system);
  const paragraphs = (lines: readonly string[]): string =>
    lines.map((line) => `<p>${escaped(line)}</p>`).join('\n');
  return htmlPage(
    `Variants of ${shelter}`,
    `<p><code>${escaped(file)}</code></p>
${paragraphs(stoppedAt(explored))}
<p class="quiet">${escaped(caution)}</p>`,
    `${typeof chart === 'string' ? paragraphs([chart]) : `<figure class="chart">${toSvg(chart, 'paper')}</figure>`}
${tableOf(explored, system)}
${paragraphs(conclusions(choices))}
<h3>Held fixed</h3>
<ul>${explored.heldFixed.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`,
  );
}

function tableOf(explored: Explored, system: System): string {
  const [[, ...head] = [], ...rows] = rowsOf(explored, system);
  const heads = ['variant', ...head].map((cell) => `<th scope="col">${escaped(cell)}</th>`).join('');
  const body = rows.map(([number = '', ...cells]) => {
    const others = cells.map((cell) => `<td>${escaped(cell)}</td>`).join('');
    return `<tr><th scope="row">${escaped(number.trim())}</th>${others}</tr>`;
  });
  return `<table><thead><tr>${heads}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}
