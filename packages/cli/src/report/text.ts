import { cautionLine } from '@tautline/book';
import { usedText } from '@tautline/quantity';
import type { CheckSummary, ShownFinding, ShownShelter } from './summary.ts';

const marks = { error: 'fails', warning: 'watch', information: 'ok' } as const;

/** The report a person reads in a terminal. */
export function textReport(summary: CheckSummary, options: { readonly all: boolean }): string {
  const lines: string[] = [];
  for (const problem of summary.problems) {
    lines.push(
      `${problem.file}:${problem.range.start.line}:${problem.range.start.column}  ${problem.severity}  ${problem.message}  [${problem.id}]`,
    );
  }
  if (summary.problems.length > 0) lines.push('');
  for (const shelter of summary.shelters) lines.push(...shelterLines(shelter, options.all), '');
  const errors = count(summary, 'error');
  const warnings = count(summary, 'warning');
  lines.push(
    `Read ${plural(summary.files, 'file')} with ${standing(summary)}: ${plural(errors, 'error')}, ${plural(warnings, 'warning')}.`,
  );
  lines.push(cautionLine);
  return `${lines.join('\n')}\n`;
}

/** How many shelters there are, and ranges of them. */
function standing({ shelters }: CheckSummary): string {
  const ranges = shelters.filter(({ kind }) => kind === 'range').length;
  const told = plural(shelters.length - ranges, 'shelter');
  return ranges === 0 ? told : `${told} and ${plural(ranges, 'range')}`;
}

function shelterLines(shelter: ShownShelter, all: boolean): string[] {
  const told = shelter.findings.filter(
    (finding) => all || finding.severity !== 'information' || finding.accepted !== undefined,
  );
  const passing = shelter.findings.filter((finding) => finding.verdict === 'passes').length;
  const lines = [`${shelter.name}  (${shelter.file})`];
  for (const finding of told) lines.push(...findingLines(finding));
  if (!shelter.workedOut) return [...lines, '  Not worked out: its text has to be put right first.'];
  lines.push(
    `  ${plural(passing, 'check')} passed, ${plural(shelter.assumed.length, 'value')} assumed, ${plural(shelter.notChecked.length, 'thing')} not checked${all ? ':' : ' (--all lists them).'}`,
  );
  for (const { stage, seconds, ranOut } of shelter.stages ?? [])
    lines.push(
      `    took  ${stage}  ${seconds.toFixed(3)} s${ranOut === undefined ? '' : `, more than the ${ranOut} s it may`}`,
    );
  if (all) {
    for (const entry of shelter.assumed)
      lines.push(`    assumed  ${entry.part} ${entry.fact} = ${entry.value}: ${entry.why}`);
    for (const entry of shelter.notChecked) lines.push(`    not checked  ${entry.id}: ${entry.reason}`);
  }
  return lines;
}

function findingLines(finding: ShownFinding): string[] {
  const where =
    finding.range === undefined
      ? ''
      : `${finding.file}:${finding.range.start.line}:${finding.range.start.column}`;
  const use = finding.utilisation === undefined ? '' : `  ${usedText(finding.utilisation)}`;
  const verdict = finding.accepted === undefined ? marks[finding.severity] : 'accepted';
  const lines = [`  ${verdict.padEnd(8)}  ${finding.id}${use}`, `            ${finding.message}`];
  if (finding.accepted !== undefined) lines.push(`            accepted: ${finding.accepted}`);
  if (where !== '' && finding.severity !== 'information') lines.push(`            ${where}`);
  return lines;
}

function count(summary: CheckSummary, severity: 'error' | 'warning'): number {
  return (
    summary.problems.filter((problem) => problem.severity === severity).length +
    summary.shelters.reduce(
      (sum, shelter) => sum + shelter.findings.filter((finding) => finding.severity === severity).length,
      0,
    )
  );
}

function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
