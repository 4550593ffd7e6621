/** Sites. */
import type { KindName } from '@tautline/quantity';
import type { DryDay, Exposure, LoadBasis, Site, SoilClass } from '../model/site.ts';
import { dateIn, factNode, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecDefinition } from '../spec/spec.ts';
import { assume, type Bounds, missing, type Notes, numberFact, within } from './notes.ts';

/** Seconds of the Julian year, which `yr` is in @tautline/quantity. */
const YEAR = 365.25 * 86400;

const usualPeriod = 'the gust is taken as that of once in 50 years';

const soakedWhy =
  'storms come with rain, and stakes in saturated ground hold about half: a trade study of tent stakes';

/** The site a definition describes; undefined without a design gust, which nobody can guess. */
export function readSite(definition: SpecDefinition, notes: Notes): Site | undefined {
  const or = (word: string, kind: KindName, value: number, why: string, bounds: Bounds) =>
    numberFact(notes, definition, word, bounds) ??
    assume(notes, 'site', word, value, kind, why, definition.origin);
  const orWord = <T extends string>(word: string, value: T, why: string): T =>
    (wordIn(factNode(definition, word)) as T | undefined) ??
    assume(notes, 'site', word, value, 'word', why, definition.origin);
  const gustFact = factNode(definition, 'gust');
  if (!gustFact) return missing(notes, definition, ['site', 'gust']);
  const gust = numberFact(notes, definition, 'gust', { above: 0, most: 120 });
  if (gust === undefined) return undefined;
  const period = numberIn(gustFact, 'period');
  const said = period === undefined ? undefined : within(notes, period, 'the period', { above: 0 }, gustFact);
  const dryDay = readDryDay(definition, notes);
  const ground = wordIn(factNode(definition, 'ground'));
  const wet = wordIn(factNode(definition, 'soil'), 'wet');
  return {
    id: definition.name,
    origin: definition.origin,
    gust,
    gustReturnPeriod:
      (said ?? assume(notes, 'site', 'return period', 50 * YEAR, 'time', usualPeriod, gustFact.origin)) /
      YEAR,
    exposure: orWord<Exposure>('exposure', 'open', 'open fields: common practice, no source'),
    elevation: or('elevation', 'length', 0, 'sea level, where air is heaviest', { least: -500, most: 6000 }),
    topography: or('topography', 'ratio', 1, 'flat ground', { least: 1, most: 3 }),
    groundSnow: or('snow', 'pressure', 0, 'no snow is said', { least: 0, most: 20_000 }),
    rain: or('rain', 'rain-rate', 100 / 1000 / 3600, 'a heavy shower: common practice, no source', {
      least: 0,
      most: 1000 / 1000 / 3600,
    }),
    soil: orWord<SoilClass>('soil', 'loam', 'garden soil: common practice, no source'),
    soaked:
      (wet ??
        assume(notes, 'site', 'soil when it storms', 'soaked', 'word', soakedWhy, definition.origin)) ===
      'soaked',
    coldest: or('coldest', 'temperature', 0, 'around freezing: common practice, no source', {
      least: -60,
      most: 40,
    }),
    hottest: or('hottest', 'temperature', 60, 'pipe under film in full sun: common practice, no source', {
      least: 0,
      most: 100,
    }),
    latitude: or('latitude', 'angle', 0, 'the equator, where the sun stands highest', {
      least: -Math.PI / 2,
      most: Math.PI / 2,
    }),
    basis: orWord<LoadBasis>('basis', 'asce7-asd', 'no load standard is said'),
    lowHazard: orWord<string>('hazard', 'normal', 'the heavier class, until the low one is chosen') === 'low',
    ...(ground === undefined ? {} : { givingGround: ground === 'giving' }),
    ...(dryDay === undefined ? {} : { dryDay }),
  };
}

/** A day of the dry season, as far as it was said: none of it is guessed. */
function readDryDay(definition: SpecDefinition, notes: Notes): DryDay | undefined {
  const air: Bounds = { least: -40, most: 60 };
  const coldest = numberFact(notes, definition, 'dry-day', air, 'coldest');
  const hottest = numberFact(notes, definition, 'dry-day', air, 'hottest');
  const on = dateIn(factNode(definition, 'dry-day'), 'on');
  const sunshine = numberFact(notes, definition, 'sunshine', { least: 0, most: 86_400 });
  const breeze = numberFact(notes, definition, 'breeze', { least: 0, most: 40 });
  const day: DryDay = {
    ...(coldest === undefined ? {} : { coldest }),
    ...(hottest === undefined ? {} : { hottest }),
    ...(on === undefined ? {} : { on }),
    ...(sunshine === undefined ? {} : { sunshine }),
    ...(breeze === undefined ? {} : { breeze }),
  };
  return Object.keys(day).length === 0 ? undefined : day;
}
