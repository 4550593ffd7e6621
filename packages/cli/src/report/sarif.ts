import { type Check, checks } from '@tautline/checks';
import type { CheckSummary, ShownRange } from './summary.ts';

/** SARIF 2.1.0: one run, one rule a check, paths relative to the working folder. */
export function sarifReport(summary: CheckSummary, version: string): string {
  const results = [
    ...summary.problems.map((problem) =>
      result(problem.id, problem.severity, problem.message, problem.file, problem.range),
    ),
    ...summary.shelters.flatMap((shelter) =>
      shelter.findings
        .filter((finding) => finding.verdict !== 'passes')
        .map((finding) => ({
          ...result(
            finding.id,
            finding.severity,
            `${shelter.name}: ${finding.message}`,
            finding.file,
            finding.range,
          ),
          ...(finding.accepted === undefined
            ? {}
            : { suppressions: [{ kind: 'inSource', justification: finding.accepted }] }),
        })),
    ),
  ];
  const ruleIds = new Set(results.map((entry) => entry.ruleId));
  const rules = [
    ...checks.map(rule),
    ...[...ruleIds].filter((id) => !checks.some((check) => check.id === id)).map((id) => ({ id })),
  ];
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'tautline', semanticVersion: version, rules } },
        columnKind: 'utf16CodeUnits',
        originalUriBaseIds: { ROOT: { description: { text: 'folder the command ran in' } } },
        results,
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function rule(check: Check): object {
  return {
    id: check.id,
    shortDescription: { text: check.title },
    fullDescription: { text: check.asks },
    help: { text: `${check.matters} Not covered: ${check.leavesOut}` },
  };
}

function result(
  id: string,
  severity: 'error' | 'warning' | 'information',
  message: string,
  file: string,
  range: ShownRange | undefined,
) {
  return {
    ruleId: id,
    level: severity === 'information' ? 'note' : severity,
    message: { text: message },
    locations: [
      {
        physicalLocation: {
          artifactLocation: { uri: file.split('/').map(encodeURIComponent).join('/'), uriBaseId: 'ROOT' },
          ...(range === undefined
            ? {}
            : {
                region: {
                  startLine: range.start.line,
                  startColumn: range.start.column,
                  endLine: range.end.line,
                  endColumn: range.end.column,
                },
              }),
        },
      },
    ],
  };
}
