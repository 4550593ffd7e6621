/** JUnit XML as continuous-integration servers read it: one suite a shelter, one case a finding. */
import type { CheckSummary, ShownFinding, ShownProblem, ShownShelter } from './summary.ts';

/** `level` says from which severity on a case counts as failed. */
export function junitReport(summary: CheckSummary, level: 'error' | 'warning'): string {
  const fails = (severity: string): boolean =>
    severity === 'error' || (level === 'warning' && severity === 'warning');
  const suites = [
    ...(summary.problems.length === 0 ? [] : [problemSuite(summary.problems, fails)]),
    ...summary.shelters.map((shelter) => shelterSuite(shelter, fails)),
  ];
  const all = suites.flatMap(({ cases }) => cases);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="tautline" ${counts(all)}>`,
    ...suites.map(
      ({ name, cases }) =>
        `  <testsuite name="${escaped(name)}" ${counts(cases)}>\n${cases.map((one) => one.text).join('\n')}\n  </testsuite>`,
    ),
    '</testsuites>',
    '',
  ].join('\n');
}

interface Case {
  readonly text: string;
  readonly failed: boolean;
  readonly skipped: boolean;
}

type Fails = (severity: string) => boolean;

const counts = (cases: readonly Case[]): string =>
  `tests="${cases.length}" failures="${cases.filter((one) => one.failed).length}" errors="0" skipped="${cases.filter((one) => one.skipped).length}"`;

function shelterSuite(shelter: ShownShelter, fails: Fails): { name: string; cases: Case[] } {
  const cases = [
    ...shelter.findings.map((finding) => findingCase(shelter, finding, fails)),
    ...shelter.notChecked.map(({ id, reason }) =>
      made(shelter.name, id, shelter.file, `<skipped message="${escaped(reason)}"/>`, false, true),
    ),
  ];
  return { name: `${shelter.name} (${shelter.file})`, cases };
}

function findingCase(shelter: ShownShelter, finding: ShownFinding, fails: Fails): Case {
  const failed = fails(finding.severity);
  const place =
    finding.range === undefined ? '' : `:${finding.range.start.line}:${finding.range.start.column}`;
  const told = `${finding.file}${place}  ${finding.message}`;
  const inside = failed
    ? `<failure type="${finding.severity}" message="${escaped(finding.message)}">${escaped(told)}</failure>`
    : finding.accepted !== undefined
      ? `<system-out>${escaped(`${told}\naccepted: ${finding.accepted}`)}</system-out>`
      : finding.severity === 'warning'
        ? `<system-out>${escaped(told)}</system-out>`
        : '';
  return made(shelter.name, `${finding.id} of ${finding.part}`, finding.file, inside, failed, false);
}

function problemSuite(problems: readonly ShownProblem[], fails: Fails): { name: string; cases: Case[] } {
  const cases = problems.map((problem) => {
    const place = `${problem.file}:${problem.range.start.line}:${problem.range.start.column}`;
    const failed = fails(problem.severity);
    const tag = failed ? 'failure' : 'system-out';
    const kind = failed ? ` type="${problem.severity}" message="${escaped(problem.message)}"` : '';
    const inside = `<${tag}${kind}>${escaped(`${place}  ${problem.message}`)}</${tag}>`;
    return made('texts', `${problem.id} at ${place}`, problem.file, inside, failed, false);
  });
  return { name: 'texts', cases };
}

function made(
  of: string,
  name: string,
  file: string,
  inside: string,
  failed: boolean,
  skipped: boolean,
): Case {
  const open = `    <testcase classname="${escaped(of)}" name="${escaped(name)}" file="${escaped(file)}"`;
  return { text: inside === '' ? `${open}/>` : `${open}>${inside}</testcase>`, failed, skipped };
}

/** Text for XML 1.0, in which most control characters cannot be said at all. */
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}
