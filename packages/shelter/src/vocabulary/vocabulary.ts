/** The whole vocabulary: every kind of definition, and the way to an entry by its words. */
import type { DefinitionKind, Entry } from './entry.ts';
import { priceFacts, projectFacts, rangeFacts, yardFacts } from './file-words.ts';
import { itemFacts, materialFacts } from './item-words.ts';
import { shelterFacts, variantFacts } from './shelter-words.ts';
import { siteFacts } from './site-words.ts';

interface About {
  readonly doc: string;
  readonly example: string;
}

const itemDocs: Readonly<Record<string, About>> = {
  material: {
    doc: 'A material, with its strength and stiffness.',
    example: 'material pvc-1120 { family pvc; density 1400 kg/m3 }',
  },
  pipe: {
    doc: 'A round pipe or tube: PVC, conduit, fence rail, galvanised.',
    example: 'pipe yard-pipe-1 like pvc40-25 { wall 0.12 in }',
  },
  rod: {
    doc: 'A round solid bar, such as rebar.',
    example: 'rod rebar-12 { across 12.7 mm; material rebar-steel }',
  },
  pole: {
    doc: 'A pole of bamboo or green wood, by the diameters of its two ends.',
    example: 'pole bamboo-75 { butt 80 mm; tip 55 mm; wall 8 mm; material bamboo }',
  },
  lumber: {
    doc: 'Sawn timber, by its dressed size.',
    example: 'lumber lumber-2x4 { depth 3-1/2 in; breadth 1-1/2 in; material softwood }',
  },
  cable: { doc: 'Wire, wire rope or strand.', example: 'cable wire-4 { across 4 mm; breaks at 8.7 kN }' },
  film: {
    doc: 'Clear film from the roll.',
    example: 'film film-uv-150 { thickness 150 um; grade greenhouse; life 4 yr }',
  },
  mesh: {
    doc: 'Insect mesh, shade cloth or netting from the roll.',
    example: 'mesh shade-30 { porosity 0.6; shade 0.3 }',
  },
  sheet: {
    doc: 'Stiff clear sheet, flat or corrugated.',
    example: 'sheet corrugated-pc { covers 24 in; spans 24 in }',
  },
  coupler: { doc: 'Joins two lengths in line.', example: 'coupler socket-25 { form socket; fits pvc40-25 }' },
  fitting: {
    doc: 'Joins members at an angle.',
    example: 'fitting peak-21 { form peak; fits emt-21; angle 130 deg }',
  },
  fastening: {
    doc: 'Holds film or mesh to the frame.',
    example: 'fastening strap-25 { form strap; each-holds 900 N }',
  },
  anchor: {
    doc: 'Bought ground anchor, block or pad.',
    example: 'anchor screw-anchor-100 { form screw; across 100 mm; length 0.75 m }',
  },
  supply: {
    doc: 'Something used up in building: concrete, screws, wire clips, cord, wrapping, glue, hinges and latches.',
    example: 'supply concrete-25kg { form concrete; makes 11.7 L }',
  },
};

/** Words of the top-level kinds that define stock items and materials. */
export const itemKinds: readonly string[] = Object.keys(itemDocs);

const items: readonly DefinitionKind[] = Object.entries(itemDocs).map(([word, about]) => ({
  word,
  sentence: `[like {like: item ${word}}]`,
  defines: 'item',
  named: true,
  ...about,
  facts: word === 'material' ? materialFacts : (itemFacts[word] ?? []),
}));

const kind = (
  word: string,
  defines: DefinitionKind['defines'],
  named: boolean,
  sentence: string,
  facts: readonly Entry[],
  doc: string,
  example: string,
): DefinitionKind => ({ word, defines, named, sentence, facts, doc, example });

/** Every kind of top-level block, in the order a reference shows them. */
export const definitionKinds: readonly DefinitionKind[] = [
  kind(
    'project',
    'project',
    false,
    '',
    projectFacts,
    'Settings of the whole project.',
    'project { currency USD; units metric }',
  ),
  kind(
    'site',
    'site',
    true,
    '',
    siteFacts,
    'The place a shelter stands in: wind, rain, soil.',
    'site gully-terrace { gust 42 m/s; soil loam }',
  ),
  kind(
    'shelter',
    'shelter',
    true,
    'on {site: definition site}',
    shelterFacts,
    'A shelter on a site.',
    'shelter plug-house on gully-terrace { footprint 14 ft by 40 ft }',
  ),
  kind(
    'variant',
    'variant',
    true,
    'of {shelter: definition shelter}',
    variantFacts,
    'The same shelter with some facts changed.',
    'variant plug-house-steel of plug-house { bows of emt-27 shape cold-bent }',
  ),
  kind(
    'range',
    'range',
    true,
    '',
    rangeFacts,
    'Several shelters side by side.',
    'range bed-arches { stand 6 of bed-arch; gap 2 ft }',
  ),
  kind(
    'prices',
    'prices',
    false,
    '',
    priceFacts,
    'A price list.',
    'prices { price of pvc40-25 4.20 per 20 ft }',
  ),
  kind(
    'yard',
    'yard',
    false,
    '',
    yardFacts,
    'What you already have.',
    'yard { have 12 of pvc40-25 at 20 ft }',
  ),
  ...items,
];

/** The kind of definition a word starts, e.g. 'shelter' or 'pipe'. */
export function definitionKind(word: string): DefinitionKind | undefined {
  return definitionKinds.find((candidate) => candidate.word === word);
}

/** The entry at a path of words from a definition kind down, e.g. ['shelter', 'bows', 'foot', 'lean']. */
export function entryFor(path: readonly string[]): Entry | undefined {
  const [first, ...rest] = path;
  let entry: Entry | undefined = first === undefined ? undefined : definitionKind(first);
  for (const word of rest) entry = entry && factOf(entry, word);
  return entry;
}

/** The fact of a block or line with this word. */
export function factOf(entry: Entry, word: string): Entry | undefined {
  return entry.facts?.find((candidate) => candidate.word === word);
}
