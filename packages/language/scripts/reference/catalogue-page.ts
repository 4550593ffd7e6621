/** The catalogue reference: every item with its numbers, as written and in the other units, and its source. */
import { format, type System } from '@tautline/quantity';
import type { SpecDefinition, SpecNode, SpecWorld } from '@tautline/shelter';
import { builtInCatalogue, loadWorkspace } from '../../src/index.ts';
import { sourceOf, titleOf } from '../../src/services/item-text.ts';

const intro = `# The built-in catalogue

Generated from \`catalogue/*.shelter\` by \`npm run generate\`. Do not edit.

Each number is told as the catalogue writes it, and after it in the other system of units. A source that says
"from memory" was not looked up; "common practice, no source" is what the trade does. An item of your own says
\`like\` one of these and overrides what differs: \`pipe my-pipe like pvc40-25 { wall 0.12 in }\`.
`;

export async function cataloguePage(): Promise<string> {
  const own = 'file:///reference.shelter';
  const { worldOf } = await loadWorkspace([{ uri: own, text: '' }]);
  const world = worldOf(own);
  if (world === undefined) throw new Error('the catalogue cannot be read');
  return [intro, ...builtInCatalogue.flatMap((file) => filePart(file.uri, file.text, world))].join('\n');
}

function filePart(uri: string, text: string, world: SpecWorld): string[] {
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  const head = /^(?:\/\/.*\n)+/.exec(text)?.[0] ?? '';
  const ids = [...text.matchAll(/^[a-z]+ ([\w-]+)(?: like [\w-]+)? \{$/gm)].map((match) => match[1] ?? '');
  return [
    `## ${name.replace('.shelter', '').replaceAll('-', ' ')}\n`,
    `${head.replaceAll(/^\/\/ ?/gm, '').trim()}\n`,
    '| item | what it is | numbers | source |',
    '| --- | --- | --- | --- |',
    ...ids.map((id) => row(id, text, world)),
    '',
  ];
}

function row(id: string, text: string, world: SpecWorld): string {
  const definition = world.definitions.get(id);
  if (definition === undefined) throw new Error(`the catalogue has no ${id}`);
  const lines = blockLines(id, text);
  if (lines.length !== definition.children.length)
    throw new Error(`${id} is not laid out one fact a line: run tautline format`);
  const facts = definition.children.map((node, index) => factText(node, lines[index] ?? ''));
  const like = definition.like === undefined ? '' : `as ${definition.like}, but `;
  return `| \`${id}\` | ${cell(whatItIs(definition))} | ${cell(like + facts.join('; '))} | ${cell(sourceOf(definition))} |`;
}

const whatItIs = (definition: SpecDefinition): string =>
  [definition.word, titleOf(definition)].filter((part) => part !== '').join(': ');

/** The lines of an item's block, as written. */
function blockLines(id: string, text: string): string[] {
  const block =
    new RegExp(`^[a-z]+ ${id}(?: like [\\w-]+)? \\{\\n([\\s\\S]*?)^\\}`, 'm').exec(text)?.[1] ?? '';
  return block
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

/** `outside 1.315 in (33.4 mm)`. */
function factText(node: SpecNode, line: string): string {
  const other: System = /\b(in|ft|lbf|ksi|psi|degF|mil)\b/.test(line) ? 'metric' : 'us';
  const converted = Object.values(node.slots).flatMap((value) =>
    value.type === 'quantity' && !['ratio', 'count'].includes(value.kind)
      ? // Small sizes to the hundredth, not to the next sixteenth of an inch.
        [format(value.si, value.kind === 'length' && value.si < 0.1 ? 'thickness' : value.kind, other)]
      : [],
  );
  const shown = converted.filter((text) => !line.includes(text));
  return shown.length === 0 ? line : `${line} (${shown.join(', ')})`;
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
