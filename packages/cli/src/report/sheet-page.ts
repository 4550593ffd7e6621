import { cautions, escaped } from '@tautline/book';
import { usedText } from '@tautline/quantity';
import type { ShownFinding, ShownShelter } from './summary.ts';

export interface Sheet {
  readonly shelter: ShownShelter;
  readonly title: string;
  readonly drawings: readonly { readonly view: string; readonly svg: string }[];
  readonly materials: string;
}

/** One page with a sheet a shelter: drawings, findings, materials, what was assumed and not checked. */
export function sheetPage(sheets: readonly Sheet[]): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Tautline sheets</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>Tautline sheets</h1>
<details><summary>Cautions: read before you build</summary><ul>${cautions.map((caution) => `<li>${escaped(caution)}</li>`).join('')}</ul></details>
<nav aria-label="Shelters"><ul>${sheets.map((sheet) => `<li><a href="#${sheet.shelter.name}">${escaped(sheet.shelter.name)}</a> ${tally(sheet.shelter)}</li>`).join('')}</ul></nav>
</header>
<main>
${sheets.map(section).join('\n')}
</main>
</body>
</html>
`;
}

function section(sheet: Sheet): string {
  const { shelter } = sheet;
  const told = shelter.findings.filter((finding) => finding.verdict !== 'passes');
  const passed = shelter.findings.filter((finding) => finding.verdict === 'passes');
  return `<section id="${shelter.name}" aria-labelledby="${shelter.name}-h">
<h2 id="${shelter.name}-h">${escaped(shelter.name)}</h2>
<p class="where">${escaped(sheet.title)} <code>${escaped(shelter.file)}</code></p>
<div class="drawings">${sheet.drawings.map((drawing) => `<figure><figcaption>${drawing.view}</figcaption>${ownIds(drawing.svg, `${shelter.name}-${drawing.view}`)}</figure>`).join('')}</div>
<h3>Findings</h3>
${told.length === 0 ? '<p>Nothing fails and nothing is near its limit.</p>' : table(told)}
<details><summary>${passed.length} checks passed</summary>${table(passed)}</details>
<details><summary>${shelter.assumed.length} values assumed</summary><ul>${shelter.assumed.map((entry) => `<li>${escaped(`${entry.part} ${entry.fact} = ${entry.value}: ${entry.why}`)}</li>`).join('')}</ul></details>
<details open><summary>Not checked</summary><ul>${shelter.notChecked.map((entry) => `<li>${escaped(`${entry.id}: ${entry.reason}`)}</li>`).join('')}</ul></details>
<details><summary>Materials and cutting</summary><pre>${escaped(sheet.materials)}</pre></details>
</section>`;
}

function table(findings: readonly ShownFinding[]): string {
  const rows = findings.map(
    (finding) =>
      `<tr class="${finding.severity}"><td>${escaped(finding.accepted === undefined ? finding.verdict : 'accepted')}</td><td><code>${escaped(finding.id)}</code></td><td class="n">${finding.utilisation === undefined ? '' : usedText(finding.utilisation)}</td><td>${escaped(finding.message)}${finding.loadCase === undefined ? '' : `<br><small>${escaped(finding.loadCase)}</small>`}</td></tr>`,
  );
  return `<table><thead><tr><th>verdict</th><th>check</th><th>used</th><th>what it says</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

function tally(shelter: ShownShelter): string {
  const failing = shelter.findings.filter((finding) => finding.severity === 'error').length;
  return failing === 0
    ? '<span class="holds">nothing fails</span>'
    : `<span class="fails">${failing} ${failing === 1 ? 'fails' : 'fail'}</span>`;
}

/** Ids inside a drawing are made its own, so that several drawings can stand on one page. */
function ownIds(svg: string, prefix: string): string {
  return svg
    .replace(/<\?xml[^>]*\?>/, '')
    .replace(/\bid="([^"]+)"/g, `id="${prefix}-$1"`)
    .replace(/url\(#([^)]+)\)/g, `url(#${prefix}-$1)`)
    .replace(
      /aria-labelledby="([^"]+)"/g,
      (_, ids: string) =>
        `aria-labelledby="${ids
          .split(' ')
          .map((id) => `${prefix}-${id}`)
          .join(' ')}"`,
    );
}

const style = `
:root { color-scheme: light; --ink: #1b1f24; --quiet: #59636e; --line: #c9d1d9; --paper: #fff; }
body { font: 16px/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); margin: 0 auto; max-width: 78rem; padding: 1.5rem; }
h1 { font-size: 1.5rem; margin: 0 0 .5rem; } h2 { margin: 2.5rem 0 0; border-top: 2px solid var(--ink); padding-top: .75rem; } h3 { margin: 1rem 0 .25rem; }
nav ul { columns: 3 16rem; padding-left: 1.2rem; } .where, small { color: var(--quiet); }
.drawings { display: grid; grid-template-columns: repeat(auto-fit, minmax(34rem, 1fr)); gap: 1rem; } figure { margin: 0; border: 1px solid var(--line); padding: .5rem; } figure svg { width: 100%; height: auto; } figcaption { color: var(--quiet); }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: .35rem .6rem; border-bottom: 1px solid var(--line); } td.n { text-align: right; white-space: nowrap; }
tr.error td:first-child { font-weight: 700; } tr.error td:first-child::before { content: "\\2716\\00a0"; } tr.warning td:first-child::before { content: "\\25B2\\00a0"; } .fails { font-weight: 700; } .holds { color: var(--quiet); }
pre { overflow-x: auto; background: #f6f8fa; padding: .75rem; } details { margin: .4rem 0; } summary { cursor: pointer; }
@media print { details { display: block; } nav { display: none; } section { break-before: page; } }
`;
