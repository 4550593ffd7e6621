import { measuredText, messageText } from '@tautline/checks';
import { assumedText } from '@tautline/shelter';
import { cautions as cautionList } from '../cautions.ts';
import type { Chapter } from '../context.ts';
import { html, list, table } from '../html/markup.ts';

export const cautions: Chapter = {
  id: 'cautions',
  title: 'Cautions',
  body: () => html`<p class="lead">Read these to everybody who helps.</p>\n${list(cautionList)}`,
};

export const assumed: Chapter = {
  id: 'assumed',
  title: 'Assumed and not checked',
  body: ({ evaluation, materials, system }) => {
    const accepted = evaluation.findings.filter((finding) => finding.accepted !== undefined);
    return html`<h3>Assumed because nobody said otherwise</h3>
${
  evaluation.assumed.length === 0
    ? html`<p>Nothing.</p>`
    : table(
        ['part', 'fact', 'taken as', 'why'],
        evaluation.assumed.map((one) => [
          one.part,
          one.fact,
          assumedText(one, (value, kind) => measuredText({ value, kind }, system)),
          one.why,
        ]),
      )
}
<h3>Not checked</h3>
${table(
  ['about', 'what'],
  evaluation.notChecked.map((one) => [one.id, one.reason]),
)}
${
  materials.gaps.length === 0
    ? undefined
    : html`<h3>Not counted</h3>\n${list(materials.gaps.map((gap) => gap.what))}`
}
${
  accepted.length === 0
    ? undefined
    : html`<h3>Accepted by the makers of the spec</h3>\n${table(
        ['check', 'what it says', 'because', 'until'],
        accepted.map((finding) => [
          finding.id,
          messageText(finding.message, system),
          finding.accepted?.because,
          finding.accepted?.until ?? 'always',
        ]),
      )}`
}`;
  },
};
