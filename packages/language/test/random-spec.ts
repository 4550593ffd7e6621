/** Random specs made from the vocabulary: whatever can be said, in any order, with any layout. */
import { type KindName, toSpecText } from '@tautline/quantity';
import { definitionKind, type Entry, type Piece, piecesOf, type Takes } from '@tautline/shelter';
import * as fc from 'fast-check';

/** Draws a value, as `fc.gen()` hands it to a property. */
export type Draw = fc.GeneratorValue;

/** Stock of the catalogue by kind, one or two of each are enough to be named. */
const stock: Readonly<Record<string, readonly string[]>> = {
  pipe: ['pvc40-25', 'emt-27'],
  rod: ['rebar-12'],
  pole: ['bamboo-75'],
  lumber: ['lumber-2x4', 'lumber-4x4'],
  cable: ['wire-4', 'rope-6'],
  film: ['film-uv-150'],
  mesh: ['mesh-50'],
  sheet: ['corrugated-pc'],
  coupler: ['socket-25'],
  fitting: ['cross-25', 'lashing'],
  fastening: ['board-1x3', 'strap-25'],
  anchor: ['log-deadman'],
  supply: ['concrete-25kg', 'screw-8x2in', 'tarred-twine-2mm'],
};

/** Sizes that a quantity of a kind may have, SI; lengths of a house where nothing else is said. */
const sizes: Readonly<Record<string, readonly [number, number]>> = {
  length: [0.1, 12],
  thickness: [0.001, 0.02],
  angle: [0.1, 1.5],
  slope: [0.005, 0.05],
  temperature: [273, 310],
  speed: [10, 50],
  time: [3600, 1e8],
  count: [1, 6],
};

function quantity(draw: Draw, kind: KindName): string {
  const [low, high] = sizes[kind] ?? [1, 1000];
  if (kind === 'count') return `${draw(fc.integer, { min: low, max: high })}`;
  const si = draw(fc.double, { min: low, max: high, noNaN: true });
  return toSpecText(
    Number(si.toPrecision(4)),
    kind,
    draw(fc.constantFrom<('metric' | 'us')[]>, 'metric', 'us'),
  ).text;
}

function valueText(draw: Draw, takes: Takes): string {
  const one = (words: readonly string[]): string => draw(fc.constantFrom<string[]>, ...words);
  switch (takes.type) {
    case 'quantity':
      return quantity(draw, takes.kind);
    case 'word':
      return one(takes.words.length > 0 ? takes.words : ['ginger', 'cut-flowers', 'USD']);
    case 'item':
      return one(takes.kinds.flatMap((kind) => stock[kind] ?? []));
    case 'definition':
      return takes.of === 'site' ? 'terrace' : 'house';
    case 'check':
      return one(['bow-deflection', 'heat']);
    case 'comparison':
      return one(['>=', '<=', '>', '<']);
    case 'text':
      return `"${one(['beds are inside the line', 'old drip tape', 'a // b { c } ; d'])}"`;
    case 'date':
      return one(['2026-03-01', '2027-06-30']);
  }
}

function sentence(draw: Draw, pieces: readonly Piece[]): string {
  return pieces
    .map((piece) => {
      if (piece.type === 'literal') return piece.word;
      if (piece.type === 'slot') return valueText(draw, piece.takes);
      return draw(fc.boolean) ? sentence(draw, piece.pieces) : '';
    })
    .filter((part) => part !== '')
    .join(' ');
}

/** Facts of a block in any order: what is required, some of the rest, and some of what may be said again. */
function facts(draw: Draw, entries: readonly Entry[], depth: number): readonly string[] {
  const chosen = entries.filter(
    (entry) => entry.required === true || draw(fc.integer, { min: 0, max: 3 }) === 0,
  );
  const again = chosen.filter((entry) => entry.many === true && draw(fc.boolean));
  const order = draw(fc.shuffledSubarray<Entry>, [...chosen, ...again], {
    minLength: chosen.length + again.length,
  });
  return order.map((entry) => fact(draw, entry, depth));
}

function fact(draw: Draw, entry: Entry, depth: number): string {
  const line = [entry.word, sentence(draw, piecesOf(entry))].filter((part) => part !== '').join(' ');
  return withBlock(draw, line, entry.facts === undefined ? [] : facts(draw, entry.facts, depth + 1), depth);
}

/** The line with its block on it, under it, or none; with a remark here and there. */
function withBlock(draw: Draw, line: string, inside: readonly string[], depth: number): string {
  const remark = draw(fc.integer, { min: 0, max: 9 }) === 0 ? ' // why' : '';
  if (inside.length === 0) return `${line}${remark}`;
  const oneLine = !inside.some((one) => /[\n]|\/\/ why/.test(one)) && draw(fc.boolean);
  if (oneLine) return `${line} { ${inside.join('; ')} }${remark}`;
  const indent = ' '.repeat(draw(fc.integer, { min: 0, max: 2 * depth + 3 }));
  return `${line} {${remark}\n${inside.map((one) => `${indent}${one}`).join('\n')}\n}`;
}

/** Facts that leave a house a house, whatever their values. */
const harmless: readonly string[] = [
  ...['orientation', 'worked', 'built', 'note', 'sides', 'crop', 'bench', 'bed', 'tank', 'obstacle'],
  ...['baseboards', 'irrigation', 'gutter', 'accept'],
];

/** A file of a site and a house that can be built on it, with random facts besides. */
export function randomHouse(draw: Draw): string {
  const besides = (definitionKind('shelter')?.facts ?? []).filter((entry) => harmless.includes(entry.word));
  const frame = [
    'footprint 4 m by 12 m',
    'bows spaced 1 m of pvc40-25 { shape elastic; length 6 m; foot stub of rebar-12 { deep 0.6 m } }',
  ];
  return [
    'site terrace { gust 30 m/s }',
    withBlock(draw, 'shelter house on terrace', [...frame, ...facts(draw, besides, 1)], 0),
  ].join('\n\n');
}

/** A file of a site and a shelter on it: anything that can be said, whether it can be built or not. */
export function randomSpec(draw: Draw): string {
  const block = (kind: string): readonly string[] => facts(draw, definitionKind(kind)?.facts ?? [], 1);
  return [
    withBlock(draw, 'site terrace', block('site'), 0),
    withBlock(draw, 'shelter house on terrace', block('shelter'), 0),
  ].join('\n\n');
}

/** Feet and inches between two lengths, in whole inches: what has an exact metric twin. */
function feet(draw: Draw, low: number, high: number): string {
  const inches = draw(fc.integer, { min: Math.round(low * 12), max: Math.round(high * 12) });
  const [whole, rest] = [Math.floor(inches / 12), inches % 12];
  if (whole === 0) return `${rest} in`;
  return rest === 0 ? `${whole} ft` : `${whole} ft ${rest} in`;
}

/** Frames of every shape on every kind of support and foot, each a list of facts of a shelter. */
const kindsOfFrame: readonly ((draw: Draw) => readonly string[])[] = [
  ...['arc', 'pointed', 'elastic'].map((shape) => (draw: Draw) => [
    `bows spaced ${feet(draw, 1.5, 4)} of pvc40-25 { shape ${shape}; rise ${feet(draw, 6, 7)}; foot stub of rebar-16 { length 5 ft; deep ${feet(draw, 1, 3)}; held clamped } }`,
    `purlins 3 of pvc40-20 { joint lashing }`,
  ]),
  (draw) => [
    `bows spaced ${feet(draw, 2, 4)} of emt-27 { shape cold-bent; rise ${feet(draw, 7.5, 8.5)}; leg ${feet(draw, 3, 4)}; foot driven { deep ${feet(draw, 1, 3)}; held clamped } }`,
    'ridge pipe of emt-27 { joint cross-27 }',
  ],
  (draw) => [
    `bows spaced ${feet(draw, 2, 4)} of lath-10 { shape laminated; laminations 4; rise ${feet(draw, 5, 7)}; foot concrete { deep ${feet(draw, 1, 3)}; across 10 in } }`,
  ],
  (draw) => [
    `posts sides of lumber-4x4 spaced ${feet(draw, 3, 6)} { height ${feet(draw, 5, 7)}; foot hole { deep ${feet(draw, 1, 3)}; across 10 in }; rail of lumber-2x4 }`,
    `bows spaced ${feet(draw, 1.5, 3)} of pvc40-25 { shape elastic; rise ${feet(draw, 3, 5)} }`,
    `ties of wire-4 { height 6 ft; spaced ${feet(draw, 3, 8)} }`,
  ],
  (draw) => [
    `posts grid of lumber-4x4 spaced ${feet(draw, 3, 8)} { lines ${draw(fc.integer, { min: 3, max: 5 })}; height ${feet(draw, 6, 8)}; foot concrete { deep 3 ft; across 12 in }; rail of lumber-2x6 }`,
    `rafters spaced ${feet(draw, 2, 4)} of lumber-2x4 { shape ${draw(fc.constantFrom<string[]>, 'gable', 'single-slope')}; rise ${feet(draw, 2, 4)}; joint plate-ply at peak }`,
    'braces along of lumber-2x4 { at corners }',
  ],
  (draw) => [
    `bows spaced ${feet(draw, 2, 3)} of pvc40-25 { shape elastic; rise ${feet(draw, 6, 7)}; foot ballast { weighs ${draw(fc.integer, { min: 40, max: 200 })} lb } }`,
    `ridge cable of rope-6 { tension ${draw(fc.integer, { min: 200, max: 900 })} lbf; posts of lumber-4x4 spaced ${feet(draw, 6, 12)} { foot hole { deep 2 ft; across 10 in } }; foot deadman of log-deadman { deep 3 ft } }`,
    `guys of wire-4 { at ends; out ${feet(draw, 4, 8)}; foot screw of screw-anchor-100 { deep 28 in } }`,
  ],
  (draw) => [
    `posts sides of lumber-4x4 spaced ${feet(draw, 4, 8)} { height 6 ft; foot concrete { deep 3 ft; across 12 in }; rail of lumber-2x6 }`,
    `inflated { pressure ${draw(fc.integer, { min: 1, max: 3 })} psf; rise ${feet(draw, 1, 2)}; strapped by strap-25 every 4 ft }`,
  ],
  (draw) => [`cap spaced ${feet(draw, 3, 5)} of clear-sheet-1 { rise ${feet(draw, 1, 2)}; foot bearing }`],
];

export const framesToDraw = kindsOfFrame.length;

/** A house of one kind of frame in feet and pounds, on a site in them, with things under it and random facts besides. */
export function randomKind(draw: Draw, kind: number): string {
  const besides = (definitionKind('shelter')?.facts ?? []).filter((entry) =>
    ['orientation', 'worked', 'built', 'sides', 'irrigation', 'note'].includes(entry.word),
  );
  const roof =
    kind === framesToDraw - 1
      ? []
      : [
          `cover roof with film-uv-150 { fastened by board-1x3; tension ${draw(fc.integer, { min: 2, max: 20 })} plf; installed 2026-03-01 }`,
        ];
  const lines = [
    `footprint ${feet(draw, 12, 14)} by ${feet(draw, 24, 40)}`,
    ...kindsOfFrame[kind]!(draw),
    ...roof,
    `crop ginger hung ${draw(fc.integer, { min: 0, max: 3 })} lb/ft2 { height ${feet(draw, 1, 4)}; from side ${feet(draw, 1, 3)} }`,
    `require headroom >= ${feet(draw, 4, 7)} at ${feet(draw, 2, 4)} from side`,
    ...facts(draw, besides, 1),
  ];
  return [
    `site terrace { gust ${draw(fc.integer, { min: 30, max: 90 })} mph; rain 4 in/h; soil ${draw(fc.constantFrom<string[]>, 'loam', 'sand', 'clay')}; snow ${draw(fc.integer, { min: 0, max: 20 })} psf; elevation ${draw(fc.integer, { min: 0, max: 3000 })} ft }`,
    withBlock(draw, 'shelter house on terrace', lines, 0),
  ].join('\n\n');
}
