/** Parts that wind loads and that have no place in the ranking of gusts, each with the reason. */
import { type JointUse, type Part, type Posts, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import { railPart } from './checks/end-frame.ts';
import type { MessagePiece } from './finding.ts';
import type { FirstFailure, Unranked } from './gust-order.ts';
import { measured } from './judge.ts';
import { postNoun, railNoun } from './rails.ts';

/** A part that wind loads; `why` says why nothing ranks it, where nothing does. */
export interface WindLoaded {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly noun: string;
  readonly why: string;
}

/** What has no reason of its own: a measure that should be there had nothing to measure. */
const nothing = 'in this house no combination with wind brings it a load that its check asks for';

/** Of what stands in the ends. */
const inSpace =
  'what the wind on the end wall brings it only the whole house in space (the full analysis) tells';

/** Every part of a shelter that wind reaches, from the frame to its covers. */
export function windLoaded(shelter: Shelter): readonly WindLoaded[] {
  const { roof, sidePosts, eaveRail, baseboards, purlins, braces, endFrames, doors, gutters } = shelter;
  const list: WindLoaded[] = [];
  const add = (part: Pick<Part, 'id' | 'origin'> | undefined, noun: string, why = nothing): void => {
    if (part !== undefined) list.push({ part, noun, why });
  };
  add(roof, nounOfRoof[roof.type], roofWhy(roof.type));
  if (roof.type === 'bows' || roof.type === 'cap') add(roof.foot, 'foot of the frame');
  if (roof.type === 'bows') add(roof.crownFitting, 'fitting at the crown', jointWhy(roof.crownFitting));
  if (roof.type === 'bows' || roof.type === 'rafters')
    for (const joint of roof.joints) add(joint, joint.item.title, jointWhy(joint));
  if (roof.type === 'rafters') {
    add(roof.peakJoint, 'joint at the peak', jointWhy(roof.peakJoint));
    add(roof.eaveJoint, 'joint at the eave', jointWhy(roof.eaveJoint));
    add(roof.tie, 'tie between the rafters');
  }
  if (sidePosts !== undefined) onPosts(add, sidePosts, 'side post');
  add(
    eaveRail,
    'eave rail',
    'it lies on a post under every frame, or a cable takes its place, and no check asks for its bending',
  );
  for (const rail of railsUnder(shelter)) onRidge(add, rail);
  for (const rail of purlins)
    add(
      rail,
      rail.role === 'ridge' ? 'ridge the frames carry' : 'purlin',
      'film presses on the frames; what runs along between them is asked for its strength under sheets only',
    );
  add(baseboards, 'baseboard', 'no check asks for the strength of a baseboard');
  for (const brace of braces) {
    add(brace, brace.role, braceWhy(brace));
    add(brace.foot, `anchor of the ${brace.role}`, braceWhy(brace));
  }
  for (const cover of shelter.covers) {
    const noun = `${cover.skin.kind} of the ${cover.place}`;
    const { fastening, fasteningSpacing, id, origin } = cover;
    if (cover.skin.kind === 'sheet' && cover.place === 'roof') {
      add(cover, noun);
      add(
        { id: `${id}/screws`, origin },
        `screws of the ${noun}`,
        purlins.length === 0 ? 'no purlins were said, so what they are screwed to is not known' : nothing,
      );
      continue;
    }
    add(cover, noun, coverWhy(cover));
    const loose = fastening === undefined || (fastening.per === 'piece' && fasteningSpacing === undefined);
    if (cover.skin.kind !== 'sheet' && loose)
      add(
        { id: `${id}/edge`, origin },
        `edge of the ${noun}`,
        'what holds it, or how far apart, was not said',
      );
  }
  add(endFrames, 'uprights of the end frames', inSpace);
  add(endFrames?.foot, 'feet of the end frames', inSpace);
  if (endFrames?.rail !== undefined) add(railPart(endFrames), 'rail of the end frames', inSpace);
  for (const door of doors ?? []) add(door, 'door', 'no check asks for doors and their hinges');
  for (const gutter of gutters ?? []) add(gutter, 'gutter', 'no check asks for wind on a gutter');
  return list;
}

type Add = (part: Part | undefined, noun: string, why?: string) => void;

function onPosts(add: Add, posts: Posts, noun: string): void {
  add(posts, noun);
  add(posts.foot, `foot of the ${noun}`);
}

function onRidge(add: Add, rail: Rail): void {
  const noun = railNoun(rail);
  add(rail, rail.member.kind === 'cable' ? `${noun} cable` : noun);
  if (rail.posts !== undefined) {
    add(rail.posts, postNoun(rail), 'nothing holds it upright along the house, or nothing presses it');
    add(rail.posts.foot, `foot of the ${postNoun(rail)}`, 'how it sinks is not covered for this foot');
  }
  add(rail.endAnchor, `anchor of the ${noun} cable`, 'how it is pulled up is not covered for this anchor');
}

const nounOfRoof = { bows: 'bow', rafters: 'rafter', cap: 'cap', inflated: 'blown-up roof' } as const;

function roofWhy(type: Shelter['roof']['type']): string {
  if (type === 'cap') return 'whether a gust breaks the cap itself is not calculated; its feet are ranked';
  if (type === 'inflated') return 'its films are ranked as the cover of the roof';
  return nothing;
}

function jointWhy(joint: JointUse | undefined): string {
  if (joint === undefined) return nothing;
  const { title, momentCapacity, pullCapacity } = joint.item;
  return momentCapacity <= 0 || pullCapacity <= 0
    ? `${title} has no strength in the catalogue, or turns freely`
    : 'no check asks for a joint at this place';
}

function braceWhy({ plane, role }: Shelter['braces'][number]): string {
  if (plane === 'along') return 'its hold is counted together with what it braces';
  if (role === 'tie') return 'in this house no combination with wind pulls or presses it';
  return `the typical frame has no ${role}s across: only the whole house in space (the full analysis) tells their share of the wind`;
}

function coverWhy({ skin }: Shelter['covers'][number]): string {
  if (skin.kind === 'sheet')
    return 'sheets on sides and ends are not calculated: what they are screwed to is not said';
  return skin.kind === 'mesh' ? 'a roof of mesh is not calculated' : nothing;
}

/**
 * The parts without a place in a ranking. `asked` holds the ids of parts that have a measure: these reach no limit
 * up to `upTo` (m/s).
 */
export function unrankedOf(
  shelter: Shelter,
  failures: readonly FirstFailure[],
  asked: ReadonlySet<string>,
  reasons: ReadonlyMap<string, readonly MessagePiece[]>,
  upTo: number,
): readonly Unranked[] {
  const ranked = new Set(failures.map(({ part }) => part));
  return windLoaded(shelter)
    .filter(
      ({ part }, index, all) =>
        !ranked.has(part.id) && all.findIndex((one) => one.part.id === part.id) === index,
    )
    .map(({ part, noun, why }) => {
      const known = asked.has(part.id);
      return {
        part: part.id,
        origin: part.origin,
        noun,
        unknown: !known,
        why: known ? ['comes to no limit up to ', measured(upTo, 'speed')] : (reasons.get(part.id) ?? [why]),
      };
    });
}
