import { unitsOfKind } from '@tautline/quantity';
import type { Check } from './check.ts';
import { exampleSpecs } from './example-specs.ts';
import { fenced } from './explanation-page.ts';
import { checks } from './registry.ts';
import { sources } from './sources.ts';

/** The reference of all checks as Markdown, made from the checks themselves. */
export function checkReference(): string {
  const head = [
    '# Checks',
    '',
    '<!-- Made by `npm run generate` from packages/checks/src/checks; do not edit. -->',
    '',
    'Each check asks one question of a shelter. It passes, is near its limit (over 85 %), fails, or was not',
    'checked, with the reason. Numbers carry the safety of the load basis the site has chosen. A screening aid:',
    'local codes, permits and a licensed engineer decide.',
    '',
    '| check | asks |',
    '| --- | --- |',
    ...checks.map((check) => `| [${check.id}](#${check.id}) | ${cell(check.asks)} |`),
    '',
  ];
  return `${[...head, ...checks.flatMap(section)].join('\n').trimEnd()}\n`;
}

function section(check: Check): string[] {
  return [
    `## ${check.id}`,
    '',
    `**${check.title}.** ${check.asks}`,
    '',
    `Why it matters: ${check.matters}`,
    '',
    `    ${check.formula}`,
    '',
    ...(check.symbols.length === 0
      ? []
      : [
          '| symbol | meaning | unit |',
          '| --- | --- | --- |',
          ...check.symbols.map(
            ({ symbol, meaning, kind }) =>
              `| ${cell(symbol)} | ${cell(meaning)} | ${cell(unitsOfKind(kind) || 'plain number')} |`,
          ),
          '',
        ]),
    `Leaves out: ${check.leavesOut}`,
    '',
    `May be accepted: ${check.mayBeAccepted}`,
    '',
    'Sources:',
    '',
    ...check.sources.map((id) => {
      const source = sources[id];
      return source === undefined ? `- ${id}` : `- ${source.title}: ${source.where} (${source.standing})`;
    }),
    '',
    ...specLines(check.id),
  ];
}

/** The spec that fails and the one that does not; the tests run both. */
function specLines(id: string): string[] {
  const specs = exampleSpecs(id);
  return specs === undefined
    ? []
    : [
        'A spec that fails by it:',
        '',
        fenced(specs.bad),
        '',
        'A spec that does not:',
        '',
        fenced(specs.good),
        '',
      ];
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}
