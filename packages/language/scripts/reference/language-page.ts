/** The language reference, made from the vocabulary and the table of units: nothing in it is written twice. */
import { type Kind, kinds } from '@tautline/quantity';
import { type DefinitionKind, definitionKinds, type Entry } from '@tautline/shelter';
import { patternText } from '../../src/problems/wording.ts';

const intro = `# The language

Generated from the vocabulary by \`npm run generate\`. Do not edit.

A spec is a text file whose name ends in \`.shelter\`. One fact stands on a line; a block in braces says more of
the thing on its line. Facts may also stand side by side with \`;\` between them, and a fact of a block may be
said as a clause of its line: \`bows spaced 4 ft { of pvc40-25 }\` and \`bows { spaced 4 ft; of pvc40-25 }\` say
the same. The order of facts does not matter.

| to write | write |
| --- | --- |
| a remark | \`// to the end of the line\` or \`/* between these */\` |
| what a thing is, for books and drawings | \`/** just above its block */\`; its first line is the title |
| facts of another file | \`import "site.shelter"\`, a path from the file itself, inside the workspace |
| a value to use again | \`let bay = 4 ft\`, then \`spaced bay\` or \`length (2 * bay)\` |
| a date | \`2026-03-01\` |
| a name | letters, digits, \`-\` and \`_\`, a letter first |

Every number that measures something has its unit; a length may be given in parts: \`7 ft 6 in\`, \`1-3/8 in\`. Units
may be combined with \`.\` and \`/\`: \`N.m\`, \`kg/m2\`. Sums, differences, products and quotients are checked for
what they measure.

In the patterns below \`<...>\` stands for a value, \`[...]\` may be left out (with dots behind it, said again), and \`|\` is or. What is left out and
has a usual value is assumed, and every report lists what was assumed.
`;

/** The whole page as Markdown. */
export function languagePage(): string {
  const blocks = definitionKinds.filter(({ defines }) => defines !== 'item');
  const items = definitionKinds.filter(({ defines }) => defines === 'item');
  const said = new Set(definitionKinds.flatMap(kindsIn));
  return [
    intro,
    '## Values\n',
    '| kind | what it is |\n| --- | --- |',
    ...Object.entries(kinds)
      .filter(([name]) => said.has(name))
      .map(([name, { description }]: [string, Kind]) => `| ${name} | ${cell(description)} |`),
    '',
    ...blocks.flatMap((kind) => definitionPart(kind)),
    '## Materials and stock items\n',
    'A stock item may say `like` another of its kind: it then has all of its facts but those it says itself.\n',
    ...items.flatMap((kind) => definitionPart(kind)),
  ].join('\n');
}

/** Kinds of value that a spec can say here: others are only shown, as results. */
function kindsIn({ sentence, facts = [] }: Entry): string[] {
  const own = [...sentence.matchAll(/\{\w+: ([\w-]+)/g)].map(([, kind]) => kind as string);
  return [...own, ...facts.flatMap(kindsIn)];
}

function definitionPart(kind: DefinitionKind): string[] {
  // A variant says what a shelter says: told once.
  const facts = kind.word === 'variant' ? [] : (kind.facts ?? []);
  const pattern = patternText(kind).split(' ');
  if (kind.named) pattern.splice(1, 0, '<name>');
  return [
    `${kind.defines === 'item' ? '###' : '##'} ${kind.word}\n`,
    `\`${pattern.join(' ')}\`\n`,
    `${kind.doc}${kind.word === 'variant' ? ' Any fact of a shelter may be said; it takes the place of the same fact there.' : ''}\n`,
    code(kind.example),
    ...table(facts),
    ...facts.flatMap((entry) => nested(entry, [kind.word])),
  ];
}

/** Entries that have facts of their own get a part of their own. */
function nested(entry: Entry, above: readonly string[]): string[] {
  const facts = entry.facts ?? [];
  if (facts.length === 0) return [];
  const path = [...above, entry.word];
  return [`#### ${path.join(' / ')}\n`, ...table(facts), ...facts.flatMap((child) => nested(child, path))];
}

function table(facts: readonly Entry[]): string[] {
  if (facts.length === 0) return [];
  return [
    '| fact | says | for example |',
    '| --- | --- | --- |',
    ...facts.map(
      (entry) =>
        `| \`${cell(patternText(entry))}\`${entry.required === true ? ' (needed)' : ''}${entry.many === true ? ' (as often as wanted)' : ''} | ${cell(entry.doc)} | \`${cell(entry.example)}\` |`,
    ),
    '',
  ];
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const code = (text: string): string => `\`\`\`shelter\n${text}\n\`\`\`\n`;
