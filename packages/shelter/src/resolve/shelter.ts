/** From a spec to a shelter: everything needed to calculate, draw and count, and everything assumed. */
import type { Shelter } from '../model/shelter.ts';
import type { Site } from '../model/site.ts';
import { dateIn, factNode, factNodes, itemIn, numberIn, wordIn } from '../spec/nodes.ts';
import type { Problem, SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { varied } from '../spec/variant.ts';
import { holdsUp, readBaseboards, readPurlins, readRidge } from './along.ts';
import { type Braced, readBrace, readGuys, readTies } from './braces.ts';
import { readAcceptances, readCrop, readRequirements } from './claims.ts';
import type { Context } from './context.ts';
import { readCover, readOpening } from './covers.ts';
import { readDoors, readEndFrames } from './end-frames.ts';
import { gridBlock, readInnerLines } from './inner-lines.ts';
import { assume, missing, type Notes, newNotes, numberFact, problem, within } from './notes.ts';
import { readSidePosts, sidePostsBlock } from './posts.ts';
import { readRoof } from './roof.ts';
import { readSite } from './site.ts';
import { readThings } from './things.ts';
import { noteUnmodelled } from './unmodelled.ts';
import { readGutter, readIrrigation } from './water.ts';
import { lookUp } from './world.ts';

export interface Resolved {
  /** Absent when something needed is missing or wrong; the problems say what. */
  readonly shelter?: Shelter;
  readonly problems: readonly Problem[];
}

/** Larger than any shelter that growers build themselves, m. */
const widest = 60;
const longest = 500;

/** Names of the shelters and variants of a world, in the order written. */
export function shelterNames(world: SpecWorld): readonly string[] {
  return [...world.definitions.values()]
    .filter((definition) => definition.word === 'shelter' || definition.word === 'variant')
    .map((definition) => definition.name);
}

/**
 * The shelter (or variant) of a name in SI units, with every assumed value listed, and the problems of its
 * spec. Never throws, whatever the spec says; a fact out of all bounds is a problem and not a number.
 */
export function resolveShelter(name: string, world: SpecWorld): Resolved {
  const notes = newNotes();
  const shelter = readShelter(name, world, notes);
  const broken = notes.problems.some((one) => one.severity === 'error');
  return shelter && !broken ? { shelter, problems: notes.problems } : { problems: notes.problems };
}

/** The site of a name, with what was assumed for it. */
export function resolveSite(name: string, world: SpecWorld): { readonly site?: Site; readonly notes: Notes } {
  const notes = newNotes();
  const definition = world.definitions.get(name);
  const site = definition?.word === 'site' ? readSite(definition, notes) : undefined;
  return site ? { site, notes } : { notes };
}

function readShelter(name: string, world: SpecWorld, notes: Notes): Shelter | undefined {
  const definition = shelterDefinition(name, world, notes);
  if (!definition) return undefined;
  const site = siteOf(definition, world, notes);
  const size = footprintOf(definition, notes);
  if (!size) return undefined;
  const context: Context = { world, notes, shelter: definition, ...size };
  const rows = factNodes(definition, 'posts');
  const posts = sidePostsBlock(rows);
  const sides = posts && readSidePosts(posts, context);
  if (posts && !sides) return undefined;
  const ridgeBlock = factNode(definition, 'ridge');
  const ridgeHeight = numberIn(factNode(ridgeBlock, 'height'));
  const roof = readRoof({ height: sides?.posts.height, ridgeHeight }, context);
  if (!roof) return undefined;
  const ridge = ridgeBlock && readRidge(ridgeBlock, roof, context);
  const grid = gridBlock(rows);
  const holds = ridge && holdsUp(ridge) ? ridge : undefined;
  const own = grid === posts ? sides?.posts : undefined;
  const inner = grid ? readInnerLines(grid, { roof, ridge: holds, own }, context) : [];
  const purlins = each(definition, 'purlins', (block) => readPurlins(block, roof, context));
  const baseboardBlock = factNode(definition, 'baseboards');
  const baseboards = baseboardBlock && readBaseboards(baseboardBlock, roof, context);
  const on: Braced = { roof, sidePosts: sides?.posts };
  const braces = [
    ...each(definition, 'braces', (block, index) => readBrace(block, index, on, context)),
    ...each(definition, 'guys', (block, index) => readGuys(block, index, on, context)),
    ...each(definition, 'ties', (block, index) => readTies(block, index, on, context)),
  ];
  const covers = each(definition, 'cover', (block) => readCover(block, roof, context));
  const opening = readOpening(covers, roof, context);
  noteUnmodelled(context);
  const orientation =
    numberFact(notes, definition, 'orientation', { least: -2 * Math.PI, most: 2 * Math.PI }) ??
    assume(notes, 'shelter', 'orientation', 0, 'angle', 'the ridge runs north and south', definition.origin);
  const crops = factNodes(definition, 'crop').map((block) => readCrop(block, context));
  const between = { roof, braces, sidePosts: sides?.posts, ridge, inner };
  const doors = readDoors(between, context);
  const endBlock = factNode(definition, 'end-frames');
  const endFrames = endBlock && readEndFrames(endBlock, doors, between, context);
  const things = readThings({ roof, braces }, context);
  const requirements = readRequirements(context);
  const acceptances = readAcceptances(context.shelter, context.notes);
  const gutters = each(definition, 'gutter', (block, index) => readGutter(block, index, context));
  const irrigation = readIrrigation(context);
  const people = wordIn(factNode(definition, 'people'));
  const built = dateIn(factNode(definition, 'built'));
  if (!site) return undefined;
  return {
    id: 'shelter',
    origin: definition.origin,
    name: definition.name,
    site,
    ...size,
    orientation,
    roof,
    ...(sides ? { sidePosts: sides.posts } : {}),
    ...(sides?.rail ? { eaveRail: sides.rail } : {}),
    ...(holds ? { ridge: holds } : {}),
    ...(inner.length === 0 ? {} : { inner }),
    ...(baseboards ? { baseboards } : {}),
    purlins: ridge && !holds ? [...purlins, ridge] : purlins,
    braces,
    covers,
    crops,
    things,
    requirements,
    acceptances,
    opening,
    ...(gutters.length === 0 ? {} : { gutters }),
    ...(endFrames === undefined ? {} : { endFrames }),
    ...(doors.length === 0 ? {} : { doors }),
    ...(irrigation === undefined ? {} : { irrigation }),
    ...(people === undefined ? {} : { climbed: people === 'climb' }),
    ...(built === undefined ? {} : { built }),
    assumed: notes.assumed,
    unmodelled: notes.unmodelled,
  };
}

/** What becomes of every block with this word. */
function each<T>(
  definition: SpecDefinition,
  word: string,
  read: (block: SpecNode, index: number) => T | undefined,
): readonly T[] {
  return factNodes(definition, word).flatMap((block, index) => read(block, index) ?? []);
}

function shelterDefinition(
  name: string,
  world: SpecWorld,
  notes: Notes,
  seen: readonly string[] = [],
): SpecDefinition | undefined {
  const definition = world.definitions.get(name);
  if (definition?.word === 'shelter') return definition;
  if (definition?.word !== 'variant') {
    const any = [...world.definitions.values()][0];
    return (
      any &&
      problem(notes, 'unknown-name', `there is no shelter '${name}' here`, definition?.origin ?? any.origin)
    );
  }
  const of = itemIn(definition, 'shelter');
  if (of === undefined) return missing(notes, definition, ['variant', 'of']);
  if (seen.includes(name)) {
    return problem(
      notes,
      'like-cycle',
      `${[...seen, name].join(' of ')}: one of them must be a shelter`,
      definition.origin,
    );
  }
  if (
    !lookUp(
      of,
      ['shelter', 'variant'],
      world,
      notes,
      definition.slots['shelter']?.origin ?? definition.origin,
    )
  )
    return undefined;
  const base = shelterDefinition(of, world, notes, [...seen, name]);
  return base && varied(base, definition);
}

function siteOf(definition: SpecDefinition, world: SpecWorld, notes: Notes): Site | undefined {
  const name = itemIn(definition, 'site');
  if (name === undefined) {
    const message = `${definition.name} stands on no site: write \`shelter ${definition.name} on gully-terrace\``;
    return problem(notes, 'missing-fact', message, definition.origin);
  }
  const site = lookUp(name, ['site'], world, notes, definition.slots['site']?.origin ?? definition.origin);
  return site && readSite(site, notes);
}

function footprintOf(
  definition: SpecDefinition,
  notes: Notes,
): { readonly width: number; readonly length: number } | undefined {
  const fact = factNode(definition, 'footprint');
  const width = numberIn(fact, 'width');
  const length = numberIn(fact, 'length');
  if (!fact || width === undefined || length === undefined)
    return missing(notes, definition, ['shelter', 'footprint']);
  const wide = within(notes, width, 'the width of the footprint', { above: 0, most: widest }, fact);
  const long = within(notes, length, 'the length of the footprint', { above: 0, most: longest }, fact);
  return wide === undefined || long === undefined ? undefined : { width: wide, length: long };
}
