/** The calculation behind findings as a page of Markdown: each step with its formula, inputs and source. */
import { type Finding, measuredText, messageText, sources, verdictText } from '@tautline/checks';
import type { Sheets } from '@tautline/language/server';
import { type System, usedText } from '@tautline/quantity';

export const calculation: NonNullable<Sheets['calculation']> = (name, findings, system) => {
  const [only] = findings;
  const title = findings.length === 1 && only !== undefined ? `${name} ${only.id}` : name;
  const lines = [
    `# ${escaped(title)}`,
    '',
    '*A screening aid: local codes, permits and a licensed engineer decide.*',
    '',
    ...findings.flatMap((finding) => findingLines(finding, system)),
  ];
  if (findings.length === 0) {
    lines.push('There is no calculation of this check here.');
  }
  return { title, markdown: `${lines.join('\n')}\n` };
};

function findingLines(finding: Finding, system: System): string[] {
  const { demand, capacity, utilisation, loadCase } = finding;
  const used = utilisation === undefined ? '' : `, ${usedText(utilisation)} used`;
  return [
    `## ${finding.id}: ${verdictText(finding)}${used}`,
    '',
    escaped(messageText(finding.message, system)),
    '',
    ...(loadCase === undefined ? [] : [`Load case: ${escaped(loadCase)}`, '']),
    ...(demand === undefined || capacity === undefined
      ? []
      : [`Demand ${measuredText(demand, system)}, capacity ${measuredText(capacity, system)}.`, '']),
    ...finding.steps.flatMap((step, index) => [
      `${index + 1}. **${escaped(step.meaning)}**: \`${step.formula}\``,
      ...step.inputs.map(
        (input) =>
          `   - ${escaped(input.symbol)}, ${escaped(input.meaning)}: ${measuredText(input, system)}${input.assumed === true ? ' (assumed)' : ''}`,
      ),
      `   - **${escaped(step.symbol)} = ${measuredText(step, system)}**, by ${sourceText(step.source)}`,
    ]),
    '',
    `Source: ${sourceText(finding.source)}`,
    '',
  ];
}

function sourceText(id: string): string {
  const source = sources[id];
  return source === undefined
    ? escaped(id)
    : `${escaped(source.title)}, ${escaped(source.where)} (${source.standing})`;
}

/** Names and texts of a user must not turn into markup. */
function escaped(text: string): string {
  return text.replaceAll(/[\\`*_{}[\]<>#|]/g, (sign) => `\\${sign}`);
}
