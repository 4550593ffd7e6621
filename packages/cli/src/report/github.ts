import type { CheckSummary, ShownRange } from './summary.ts';

/** Workflow commands that a code forge shows beside the lines. */
export function githubReport(summary: CheckSummary): string {
  const lines: string[] = [];
  for (const problem of summary.problems)
    lines.push(command(problem.severity, problem.file, problem.range, problem.id, problem.message));
  for (const shelter of summary.shelters) {
    for (const finding of shelter.findings) {
      if (finding.severity === 'information') continue;
      lines.push(
        command(
          finding.severity,
          finding.file,
          finding.range,
          finding.id,
          `${shelter.name}: ${finding.message}`,
        ),
      );
    }
  }
  return lines.length === 0 ? '' : `${lines.join('\n')}\n`;
}

function command(
  level: 'error' | 'warning',
  file: string,
  range: ShownRange | undefined,
  title: string,
  message: string,
): string {
  const place =
    range === undefined
      ? ''
      : `,line=${range.start.line},col=${range.start.column},endLine=${range.end.line},endColumn=${range.end.column}`;
  return `::${level} file=${property(file)}${place},title=${property(title)}::${data(message)}`;
}

const data = (text: string): string => text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
const property = (text: string): string => data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
