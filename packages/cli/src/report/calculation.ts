/** A finding's calculation as a person follows it: formula, numbers, result, source; assumed values marked. */
import {
  type Evaluation,
  type Finding,
  measuredText,
  messageText,
  sources,
  stormOff,
} from '@tautline/checks';
import type { System } from '@tautline/quantity';
import { usedText } from '@tautline/quantity';
import { assumedText } from '@tautline/shelter';

type Step = Finding['steps'][number];

/** The whole calculation of one finding. */
export function calculation(finding: Finding, evaluation: Evaluation, system: System): string {
  const lines = [
    `${finding.id} on ${finding.part}: ${finding.verdict}${finding.utilisation === undefined ? '' : `, ${usedText(finding.utilisation)} of what it may take`}`,
    messageText(finding.message, system),
    ...(finding.loadCase === undefined ? [] : [`Under: ${finding.loadCase}`]),
    '',
  ];
  if (finding.steps.length === 0)
    lines.push('There is no calculation behind this: it is a fact of the spec.');
  lines.push(...finding.steps.flatMap((step, index) => stepLines(step, index + 1, system)));
  lines.push('', `Judged by: ${sourceText(finding.source)}`);
  const taken = evaluation.assumed.filter(
    (entry) => finding.part.startsWith(entry.part) || entry.part === 'site',
  );
  if (taken.length > 0) {
    lines.push('', 'Nobody said these, so usual values were taken (assumed):');
    for (const entry of taken) {
      const value = assumedText(entry, (si, kind) => measuredText({ value: si, kind }, system));
      lines.push(`  ${entry.part} ${entry.fact} = ${value}: ${entry.why}`);
    }
  }
  return `${lines.join('\n')}\n`;
}

function stepLines(step: Step, number: number, system: System): string[] {
  const said = `${number}. ${step.meaning}`;
  const formula = `   ${step.formula.includes('=') ? '' : `${step.symbol}: `}${step.formula}`;
  const inputs = step.inputs.map(
    (input) =>
      `     ${input.symbol} = ${measuredText(input, system)}  ${input.meaning}${input.assumed === true ? '  (assumed)' : ''}`,
  );
  return [
    said,
    formula,
    ...inputs,
    `   ${step.symbol} = ${measuredText(step, system)}`,
    `   from ${sourceText(step.source)}`,
  ];
}

function sourceText(id: string): string {
  const source = sources[id];
  return source === undefined ? id : `${source.title}, ${source.where} (${source.standing})`;
}

/** The order in which parts give way as the gust rises, and the gust before which something is to be done. */
export function gustTable(evaluation: Evaluation, system: System): string {
  const { gusts } = evaluation;
  if (gusts === undefined) return 'There is no frame analysis of this roof, so no gusts were worked out.\n';
  const speed = (value: number): string => measuredText({ value, kind: 'speed' }, system);
  const lines = gusts.failures.map((failure) => {
    const marks = [
      ...(failure.sacrificial ? ['sacrificial'] : []),
      ...(failure.estimated ? ['estimated, the frame breaks before'] : []),
    ];
    const at = failure.gust > 0 ? speed(failure.gust) : 'no wind';
    return `${at.padStart(10)}  ${failure.what}  [${failure.check}]${marks.length === 0 ? '' : `  (${marks.join('; ')})`}`;
  });
  if (lines.length === 0) lines.push(`Nothing comes to its limit up to ${speed(gusts.upTo)}.`);
  if (gusts.unranked.length > 0)
    lines.push(
      '',
      'Not in this order, though the wind loads them:',
      ...gusts.unranked.map(({ noun, part, why }) => `  ${noun} [${part}]: ${messageText(why, system)}`),
    );
  if (gusts.withoutWind !== undefined)
    lines.push(
      '',
      `It does not stand without wind: ${gusts.withoutWind.what} under ${gusts.withoutWind.loadCase}. There is no gust by which the film comes off.`,
    );
  if (gusts.filmOff !== undefined)
    lines.push(
      '',
      `${stormOff(evaluation.shelter).order} before a gust of ${speed(gusts.filmOff.gust)}: ${gusts.filmOff.margin} of the first that is not sacrificial (common practice, no source).`,
    );
  lines.push('Gusts are of 3 s at 10 m, as the site says its own; limits keep the safety of the load basis.');
  return `${lines.join('\n')}\n`;
}
