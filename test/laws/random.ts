/**
 * Random houses of every kind: a sound example with each of its numbers, its stock and its site drawn anew within
 * what a builder might do. The same seed and number always give the same house.
 */
import type { SpecDefinition, SpecNode, SpecValue } from '@tautline/shelter';
import type { Subject } from './subject.ts';

export type Random = () => number;

/** Numbers from 0 to 1 from a seed, by a linear congruence; good enough to draw sizes by. */
export function randomFrom(seed: number): Random {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const oneOf = <T>(random: Random, all: readonly T[]): T => all[Math.floor(random() * all.length)]!;

/** How far a number of a fact is moved: what sets the shape a little, what is set by choice more. */
const spread: Readonly<Record<string, readonly [number, number]>> = {
  footprint: [0.9, 1.12],
  length: [0.95, 1.1],
  rise: [0.85, 1.2],
  pitch: [0.8, 1.2],
  height: [0.9, 1.15],
  spaced: [0.7, 1.6],
  deep: [0.6, 1.7],
  across: [0.7, 1.6],
  weighs: [0.5, 2],
  tension: [0.5, 2],
  fastened: [0.6, 1.8],
  strapped: [0.6, 1.8],
  hung: [0.3, 2.5],
  out: [0.7, 1.4],
  pressure: [0.7, 1.6],
};

/** Stock of like use, so that a bow of one is bought of the other. */
const alike: readonly (readonly string[])[] = [
  ['pvc40-15', 'pvc40-20', 'pvc40-25', 'pvc40-32', 'pvc40-40'],
  ['pvc80-20', 'pvc80-25', 'pvc80-32'],
  ['emt-21', 'emt-27', 'emt-35', 'emt-41'],
  ['gal-20', 'gal-25', 'gal-32', 'gal-40'],
  ['lumber-2x2', 'lumber-2x3', 'lumber-2x4', 'lumber-2x6'],
  ['lumber-4x4', 'lumber-4x6', 'lumber-6x6'],
  ['bamboo-50', 'bamboo-75', 'bamboo-100'],
  ['green-pole-90', 'green-pole-120'],
  ['rebar-10', 'rebar-12', 'rebar-16'],
  ['wire-2-5', 'wire-4'],
  ['rope-3', 'rope-5', 'rope-6'],
  ['film-uv-150', 'film-uv-200', 'film-construction-150'],
];

function slotsDrawn(random: Random, node: SpecNode): SpecNode['slots'] {
  const range = spread[node.word];
  const slots: Record<string, SpecValue> = {};
  for (const [name, value] of Object.entries(node.slots)) {
    const family = value.type === 'item' ? alike.find((one) => one.includes(value.id)) : undefined;
    if (value.type === 'quantity' && value.kind !== 'count' && range !== undefined)
      slots[name] = { ...value, si: value.si * between(random, ...range) };
    else if (value.type === 'item' && family !== undefined && random() < 0.3)
      slots[name] = { ...value, id: oneOf(random, family) };
    else slots[name] = value;
  }
  return slots;
}

const drawn = (random: Random, node: SpecNode): SpecNode => ({
  ...node,
  slots: slotsDrawn(random, node),
  children: node.children.map((child) => drawn(random, child)),
});

/** Somewhere between a valley and a coast, the tropics and the hills. */
function siteDrawn(random: Random, site: SpecDefinition): SpecDefinition {
  const { origin } = site;
  const number = (
    word: string,
    kind: 'speed' | 'pressure' | 'temperature' | 'length',
    si: number,
  ): SpecNode => ({
    word,
    slots: { value: { type: 'quantity', si, kind, origin } },
    children: [],
    origin,
  });
  const said = (word: string, all: readonly string[]): SpecNode => ({
    word,
    slots: { value: { type: 'word', word: oneOf(random, all), origin } },
    children: [],
    origin,
  });
  const facts = [
    number('gust', 'speed', between(random, 20, 55)),
    number('snow', 'pressure', random() < 0.5 ? 0 : between(random, 100, 1000)),
    number('hottest', 'temperature', between(random, 35, 75)),
    number('elevation', 'length', between(random, 0, 2500)),
    said('soil', ['sand-loose', 'sand', 'gravel', 'loam', 'clay-soft', 'clay', 'clay-stiff']),
    said('exposure', ['open', 'sheltered']),
    said('basis', ['asce7-asd', 'asce7-strength', 'eurocode']),
    said('ground', ['firm', 'firm', 'giving']),
  ];
  const words = new Set(facts.map(({ word }) => word));
  return { ...site, children: [...site.children.filter(({ word }) => !words.has(word)), ...facts] };
}

/** The house of this number made of one of these. */
export function randomHouse(models: readonly Subject[], seed: number, number: number): Subject {
  const random = randomFrom(seed + number);
  // The first numbers of a congruence are much alike for seeds that follow one another.
  for (let skip = 0; skip < 8; skip += 1) random();
  const model = models[number % models.length]!;
  const definitions = new Map(model.world.definitions);
  const house = definitions.get(model.name)!;
  definitions.set(model.name, { ...house, ...drawn(random, house) });
  const site = house.slots['site'];
  const place = site?.type === 'item' ? definitions.get(site.id) : undefined;
  if (place !== undefined) definitions.set(place.name, siteDrawn(random, place));
  return {
    from: `house ${number} of seed ${seed}`,
    name: model.name,
    world: { ...model.world, definitions },
  };
}
