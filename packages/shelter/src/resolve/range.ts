/** Several shelters side by side, with the gaps and ties between them. */
import { format } from '@tautline/quantity';
import type { CableItem, MemberItem } from '../model/items.ts';
import type { Range, RangePlace } from '../model/range.ts';
import type { Shelter } from '../model/shelter.ts';
import { factNode, factNodes, itemIn, numberIn } from '../spec/nodes.ts';
import type { Problem, SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { readAcceptances } from './claims.ts';
import { itemOf } from './items.ts';
import { assume, missing, type Notes, newNotes, numberFact, problem, within } from './notes.ts';
import { unitsOf } from './project.ts';
import { resolveShelter } from './shelter.ts';

/** Clear distance between neighbours when none is said, m: room to walk, common practice, no source. */
const usualGap = 0.6;
const mostShelters = 200;

/**
 * The range of a name, with every shelter of it resolved, and the problems of the range and of its shelters.
 * Never throws, whatever the spec says.
 */
export function resolveRange(
  name: string,
  world: SpecWorld,
): { readonly range?: Range; readonly problems: readonly Problem[] } {
  const notes = newNotes();
  const definition = world.definitions.get(name);
  const range = definition?.word === 'range' ? readRange(definition, world, notes) : undefined;
  const broken = notes.problems.some((one) => one.severity === 'error');
  return range && !broken ? { range, problems: notes.problems } : { problems: notes.problems };
}

function readRange(definition: SpecDefinition, world: SpecWorld, notes: Notes): Range | undefined {
  const stands = factNodes(definition, 'stand');
  if (stands.length === 0) return missing(notes, definition, ['range', 'stand']);
  const gap =
    numberFact(notes, definition, 'gap', { least: 0, most: 100 }) ??
    assume(
      notes,
      'range',
      'gap',
      usualGap,
      'length',
      'room to walk: common practice, no source',
      definition.origin,
    );
  const places: RangePlace[] = [];
  let x = 0;
  for (const [line, stand] of stands.entries()) {
    const shelter = standing(stand, world, notes);
    const count = numberIn(stand, 'count') ?? 1;
    const whole = within(notes, count, 'the number of shelters', { least: 1, most: mostShelters }, stand);
    if (!shelter || whole === undefined) return undefined;
    for (let n = 0; n < Math.round(whole); n++) {
      places.push({ id: `stand-${line + 1}`, origin: stand.origin, shelter, x });
      x += shelter.width + gap;
    }
  }
  stubsInTheWay(places, gap, definition, world, notes);
  const tie = readTie(definition, world, notes);
  const beside = 'how neighbours shelter each other from the wind, or squeeze it through the gap';
  const across = 'forces that ties carry from one shelter to the next';
  return {
    name: definition.name,
    origin: definition.origin,
    places,
    gap,
    ...(tie ? { tie } : {}),
    width: x - gap,
    acceptances: readAcceptances(definition, notes),
    assumed: notes.assumed,
    unmodelled: [beside, ...(tie ? [across] : [])].map((what) => ({ what, origin: definition.origin })),
  };
}

/** Leaning stubs and legs that reach under the neighbour, where its own stubs, roots and posts are. */
function stubsInTheWay(
  places: readonly RangePlace[],
  gap: number,
  definition: SpecDefinition,
  world: SpecWorld,
  notes: Notes,
): void {
  if (places.length < 2) return;
  const say = (si: number): string => format(si, 'length', unitsOf(world));
  for (const shelter of new Set(places.map((place) => place.shelter))) {
    const foot = shelter.roof.type === 'bows' ? shelter.roof.foot : undefined;
    if (foot?.lean === undefined || foot.lean >= Math.PI / 2) continue;
    const reach = foot.driven / Math.tan(foot.lean);
    if (reach <= gap + 1e-6) continue;
    problem(
      notes,
      'stubs-meet',
      `the ${foot.kind === 'stub' ? 'stubs' : 'legs'} of ${shelter.name} lean out ${say(reach)} on their way down, past the gap of ${say(gap)} and under its neighbour: keep ${say(reach)} between them, or make the bows steeper`,
      definition.origin,
      'warning',
    );
  }
}

function standing(stand: SpecNode, world: SpecWorld, notes: Notes): Shelter | undefined {
  const name = itemIn(stand, 'shelter');
  if (name === undefined) return missing(notes, stand, ['range', 'stand']);
  const origin = stand.slots['shelter']?.origin ?? stand.origin;
  const word = world.definitions.get(name)?.word;
  if (word !== 'shelter' && word !== 'variant') {
    return problem(notes, 'unknown-name', `there is no shelter '${name}' here`, origin);
  }
  const { shelter, problems } = resolveShelter(name, world);
  for (const one of problems) problem(notes, one.id, one.message, one.origin, one.severity);
  return shelter;
}

function readTie(definition: SpecDefinition, world: SpecWorld, notes: Notes): Range['tie'] | undefined {
  const fact = factNode(definition, 'tied');
  const kinds = ['pipe', 'rod', 'pole', 'lumber', 'cable'];
  const member = itemOf(fact, kinds, world, notes) as MemberItem | CableItem | undefined;
  const spacing = numberFact(notes, definition, 'tied', { above: 0, most: 1000 });
  return fact && member && spacing !== undefined ? { member, spacing, origin: fact.origin } : undefined;
}
