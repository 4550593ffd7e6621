import { checkOf, type Finding, measuredText, messageText, sources } from '@tautline/checks';
import { type System, usedText } from '@tautline/quantity';
import type { Chapter } from '../context.ts';
import { html, type Markup, table } from '../html/markup.ts';

export const calculations: Chapter = {
  id: 'calculations',
  title: 'Calculation sheets',
  body: ({ evaluation, system }) => {
    const numbered = marks(evaluation.findings);
    return html`<p>One sheet a finding, for a reviewer: what was asked, by which formula, from what, with which result, by whose rule.</p>
${table(
  ['check', 'part', 'verdict', 'used'],
  evaluation.findings.map((finding) => [
    finding.id,
    finding.part,
    finding.accepted ? `${finding.verdict}, accepted` : finding.verdict,
    used(finding),
  ]),
  [3],
)}
${evaluation.findings.map((finding) => sheet(finding, system, numbered))}
<h3>Sources</h3>
<dl class="facts quiet">${[...numbered].map(([id, mark]) => html`<dt>${mark}</dt><dd>${sourceText(id)}</dd>\n`)}</dl>`;
  },
};

/** Every source that the findings name, with its mark, in the order of first use. */
function marks(findings: readonly Finding[]): ReadonlyMap<string, string> {
  const ids = findings.flatMap((finding) => [finding.source, ...finding.steps.map((step) => step.source)]);
  return new Map([...new Set(ids)].map((id, index) => [id, `S${index + 1}`]));
}

const used = ({ utilisation }: Finding): string => (utilisation === undefined ? '' : usedText(utilisation));

function sheet(finding: Finding, system: System, numbered: ReadonlyMap<string, string>): Markup {
  const check = checkOf(finding.id);
  const { demand, capacity, loadCase, steps } = finding;
  return html`<div class="finding"><h3>${check?.title ?? finding.id} <span class="quiet">(${finding.id}, ${finding.part})</span></h3>
<p><strong>${finding.verdict}${finding.accepted ? ', accepted' : ''}${finding.utilisation === undefined ? '' : `, ${used(finding)} used`}.</strong> ${messageText(finding.message, system)}</p>
<dl class="facts quiet">
${check ? html`<dt>Asks</dt><dd>${check.asks}</dd>\n` : undefined}${loadCase === undefined ? undefined : html`<dt>Load case</dt><dd>${loadCase}</dd>\n`}${demand === undefined ? undefined : html`<dt>Demand</dt><dd>${measuredText(demand, system)}</dd>\n`}${capacity === undefined ? undefined : html`<dt>Limit</dt><dd>${measuredText(capacity, system)}</dd>\n`}<dt>Source</dt><dd>${numbered.get(finding.source)}: ${sourceText(finding.source)}</dd>
${check ? html`<dt>Leaves out</dt><dd>${check.leavesOut}</dd>` : undefined}
</dl>
${
  steps.length === 0
    ? undefined
    : table(
        ['what', 'formula and what went in', 'result', 'source'],
        steps.map((step) => [
          `${step.symbol}: ${step.meaning}`,
          html`<span class="formula">${step.formula}</span>${step.inputs.map(
            (input) =>
              html`<br/>${input.symbol} = ${measuredText(input, system)}, ${input.meaning}${input.assumed ? ' (assumed)' : ''}`,
          )}`,
          measuredText({ value: step.value, kind: step.kind }, system),
          numbered.get(step.source),
        ]),
        [2],
        'steps',
      )
}</div>
`;
}

/** Title, place and standing of a source. */
function sourceText(id: string): string {
  const source = sources[id];
  return source ? `${source.title}, ${source.where} (${source.standing})` : id;
}
