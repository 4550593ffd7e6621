/**
 * What age has taken from the strength of film and of what stands in the soil. Ages are counted from the days
 * the spec says (`installed` of a cover, `built` of the shelter) to the day of the check; where one of them is
 * missing the strength when new is used, and `agesUnknown` says so.
 */
import {
  type Ageing,
  agedFastener,
  agedFilm,
  agedInSoil,
  agedPvc,
  lifeInSoil,
  type Step,
} from '@tautline/loads';
import type { Cover, FasteningItem, Foot, MemberItem, Shelter } from '@tautline/shelter';
import { inSoil } from './resistance.ts';

/** Seconds from one ISO date to another; negative when the second is before the first. */
export function between(from: string, to: string): number {
  return (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 1000;
}

/** Age on a day, s; undefined where a day is missing or it is not there yet. */
function ageOn(since: string | undefined, on: string | undefined): number | undefined {
  if (since === undefined || on === undefined) return undefined;
  const age = between(since, on);
  return age < 0 ? undefined : age;
}

/** Strength left in a film on a day; undefined where its age is not known. */
export function filmAgeing(cover: Cover, on: string | undefined): Ageing | undefined {
  const age = ageOn(cover.installed, on);
  return age === undefined || cover.skin.kind !== 'film' ? undefined : agedFilm(age, cover.skin.life);
}

/** What is left of a strap, rope or clip on a day, `since` the day it went on; undefined where that is not known. */
export function fastenerAgeing(
  { life, fibre }: FasteningItem,
  since: string | undefined,
  on: string | undefined,
): Ageing | undefined {
  const age = ageOn(since, on);
  return age === undefined || life === undefined ? undefined : agedFastener(fibre, age, life);
}

/** What is left of what holds the edges of a cover: the less of its own age and of the skin that tears out of it. */
export function edgeAgeing(cover: Cover, on: string | undefined): Ageing | undefined {
  const film = filmAgeing(cover, on);
  const own =
    cover.fastening === undefined
      ? undefined
      : fastenerAgeing(cover.fastening, cover.fastenedSince ?? cover.installed, on);
  return own !== undefined && own.share < (film?.share ?? 1) ? own : film;
}

/** The share and the step of an ageing; as new, and no step, where there is none. */
export function leftOf(ageing: Ageing | undefined): {
  readonly share: number;
  readonly steps: readonly Step[];
} {
  return ageing === undefined ? { share: 1, steps: [] } : { share: ageing.share, steps: [ageing.step] };
}

/** How far from where it leaves the soil a member counts as rotten with it, m: common practice, no source. */
const rotten = 0.3;

/** What age leaves of a member: near its foot what stands in the soil has rotted, PVC keeps its strength. */
export interface MemberAgeing {
  /** Share of the strength left at a place `at` m from its foot, of a member `total` m long with feet at `ends`. */
  readonly shareAt: (at: number) => number;
  readonly stepsAt: (at: number) => readonly Step[];
}

/** Nothing taken. */
export const asNew: MemberAgeing = { shareAt: () => 1, stepsAt: () => [] };

/**
 * What age leaves of a bow or post that stands on a foot. `total` is the length of a bow, which has a foot at
 * both ends; posts have theirs at 0.
 */
export function memberAgeing(
  shelter: Shelter,
  on: string | undefined,
  member: MemberItem,
  foot: Foot | undefined,
  total?: number,
): MemberAgeing {
  const age = ageOn(shelter.built, on);
  if (age === undefined) return asNew;
  const { family, treated } = member.material;
  if (family === 'pvc') return { shareAt: () => 1, stepsAt: () => [agedPvc(age).step] };
  const ageing = inSoil(foot) ? agedInSoil(family, treated === true, age) : undefined;
  if (ageing === undefined) return asNew;
  const near = (at: number): boolean => at < rotten || (total !== undefined && at > total - rotten);
  return {
    shareAt: (at) => (near(at) ? ageing.share : 1),
    stepsAt: (at) => (near(at) ? [ageing.step] : []),
  };
}

/** What stands in the soil and would rot, as words. */
function rotting(shelter: Shelter): readonly string[] {
  const { roof, sidePosts } = shelter;
  const standing = [
    ...(roof.type === 'bows' ? [{ member: roof.member, foot: roof.foot, noun: 'bows' }] : []),
    ...(sidePosts === undefined
      ? []
      : [{ member: sidePosts.member, foot: sidePosts.foot, noun: 'side posts' }]),
  ];
  return standing
    .filter(
      ({ member, foot }) =>
        inSoil(foot) && lifeInSoil(member.material.family, member.material.treated === true) !== undefined,
    )
    .map(({ noun }) => noun);
}

/** What is reckoned as new because its age is not known. */
export function agesUnknown(shelter: Shelter, on: string | undefined): readonly string[] {
  const day = on === undefined ? 'no day was given to count its age to' : undefined;
  const films = shelter.covers.filter(
    (cover) => cover.place === 'roof' && cover.skin.kind === 'film' && filmAgeing(cover, on) === undefined,
  );
  const wood = rotting(shelter);
  return [
    ...(films.length === 0
      ? []
      : [
          `the roof film is reckoned as strong as new: ${day ?? 'it was not said when it went on, or that day is to come'}`,
        ]),
    ...(wood.length === 0 || ageOn(shelter.built, on) !== undefined
      ? []
      : [
          `the ${wood.join(' and ')} of untreated stock are reckoned as sound where they stand in the soil: ${
            day ?? 'it was not said when they were set, as in `built 2026-03-15`'
          }`,
        ]),
  ];
}
