import type { KindName } from '@tautline/quantity';
import { unitsOfKind } from '@tautline/quantity';
import type { Check } from './check.ts';
import { exampleSpecs } from './example-specs.ts';
import { sources } from './sources.ts';

/** The explanation of a check as a page of Markdown, made from the check's own words and its two specs. */
export function explanationPage(check: Check): string {
  const symbols = check.symbols.map(
    ({ symbol, meaning, kind }) => `- \`${symbol}\`: ${meaning}${inUnits(kind)}`,
  );
  const from = check.sources.map((id) => {
    const source = sources[id];
    return `- ${source ? `${source.title}, ${source.where} (${source.standing})` : id}`;
  });
  const specs = exampleSpecs(check.id);
  const part = (title: string, body: string | readonly string[]): string => {
    const text = typeof body === 'string' ? body : body.join('\n');
    return text === '' ? '' : `## ${title}\n\n${text}`;
  };
  return `${[
    `# ${check.title}`,
    `*Check \`${check.id}\` of a screening aid: local codes, permits and a licensed engineer decide.*`,
    check.asks,
    part('Why it matters', check.matters),
    part('How it is worked out', `\`\`\`text\n${check.formula}\n\`\`\``),
    part('What the letters mean', symbols),
    part('What it leaves out', check.leavesOut),
    part('When it may be accepted', check.mayBeAccepted),
    part('Where the numbers come from', from),
    part('A spec that fails by it', specs === undefined ? '' : fenced(specs.bad)),
    part('A spec that does not', specs === undefined ? '' : fenced(specs.good)),
  ]
    .filter((text) => text !== '')
    .join('\n\n')}\n`;
}

/** `, in mm, m or in, ft` after what a symbol means; nothing after a plain number. */
export function inUnits(kind: KindName): string {
  const units = unitsOfKind(kind);
  return units === '' ? '' : `, in ${units}`;
}

/** A spec as a block of code. */
export function fenced(spec: string): string {
  return `\`\`\`shelter\n${spec.trimEnd()}\n\`\`\``;
}
