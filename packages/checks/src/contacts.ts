/** Where one member lies on another and presses it: the places, how large they are, and what presses there. */
import type { Duration } from '@tautline/loads';
import type { MemberItem, Part, Posts, Rail, Shelter } from '@tautline/shelter';
import type { FrameAnalysis, RailDemand, Response } from '@tautline/structure';
import { loadedRails, railNoun } from './rails.ts';

/** A press on one place of contact. */
export interface Press {
  /** N */
  readonly force: number;
  readonly loadCase: string;
  readonly duration: Duration;
}

export interface Contact {
  readonly part: Pick<Part, 'id' | 'origin'>;
  /** The member that is pressed from its side. */
  readonly member: MemberItem;
  /** e.g. 'the eave rail on each side post' */
  readonly what: string;
  /** Of the place, along the pressed member and across it, m. */
  readonly length: number;
  readonly width: number;
  readonly press: Press;
}

/** Every place where the frame, a rail or a ridge lies on what carries it. */
export function contactsOf(shelter: Shelter, analysis: FrameAnalysis): readonly Contact[] {
  return [...atEave(shelter, analysis), ...underRoof(shelter, analysis)];
}

/** Breadth of a member along the house, and its depth across it, m. */
function faces({ section }: MemberItem): { readonly along: number; readonly across: number } {
  return section.shape === 'rectangle'
    ? { along: section.breadth, across: section.depth }
    : { along: section.outside, across: section.outside };
}

/** Width of what lies level along the house, seen from above, m. */
function widthOf({ section }: MemberItem): number {
  return section.shape === 'rectangle' ? section.breadth : section.outside;
}

const isTimber = ({ section }: MemberItem): boolean => section.shape === 'rectangle';

/** How far a rail lies along a post's head and how wide: over a thin pipe only its wall carries. */
function seat(posts: Posts, rail: MemberItem): { readonly length: number; readonly width: number } {
  const { section } = posts.member;
  const { along, across } = faces(posts.member);
  const width = Math.min(widthOf(rail), across);
  if (section.shape !== 'round-hollow' || posts.filled !== undefined) return { length: along, width };
  return { length: Math.min(along, 2 * section.wall), width };
}

function atEave(shelter: Shelter, analysis: FrameAnalysis): Contact[] {
  const { sidePosts, eaveRail, roof } = shelter;
  if (sidePosts === undefined || eaveRail === undefined || eaveRail.member.kind === 'cable') return [];
  // A fitting takes hold of both, and neither lies on the other.
  if (sidePosts.topJoint !== undefined) return [];
  const rail = eaveRail.member;
  const contacts: Contact[] = [];
  const worst = mostPressed(analysis.responses, (response) => headPress(response, sidePosts.id));
  if (worst !== undefined)
    contacts.push({
      part: eaveRail,
      member: rail,
      what: 'the eave rail on each side post',
      ...seat(sidePosts, rail),
      press: worst,
    });
  if (roof.type === 'rafters' && isTimber(roof.member) && isTimber(rail) && worst !== undefined) {
    const share = Math.min(1, roof.spacing / sidePosts.spacing);
    contacts.push({
      part: roof,
      member: roof.member,
      what: 'each rafter on the eave rail',
      length: widthOf(rail),
      width: widthOf(roof.member),
      press: { ...worst, force: worst.force * share },
    });
  }
  return contacts;
}

/** What presses a post's head down: the thrust at its top. */
function headPress(response: Response, part: string): number {
  let top: { at: number; axial: number } | undefined;
  for (const { part: id, at, axial } of response.forces)
    if (id === part && (top === undefined || at > top.at || (at === top.at && axial < top.axial)))
      top = { at, axial };
  return top === undefined ? 0 : -top.axial;
}

function underRoof(shelter: Shelter, analysis: FrameAnalysis): Contact[] {
  return loadedRails(shelter, analysis).flatMap(({ rail, demand }) =>
    demand === undefined ? [] : onRailUnder(shelter, analysis, rail, demand),
  );
}

/** A ridge or an inner rail on its posts, and the frames on it. */
function onRailUnder(shelter: Shelter, analysis: FrameAnalysis, under: Rail, demand: RailDemand): Contact[] {
  const { roof } = shelter;
  const contacts: Contact[] = [];
  const rail = under.member.kind === 'cable' ? undefined : under.member;
  const { down, loadCase, duration } = demand.post;
  if (rail !== undefined && under.posts !== undefined)
    contacts.push({
      part: under,
      member: rail,
      what: `the ${railNoun(under)} on each of its posts`,
      ...seat(under.posts, rail),
      press: { force: down, loadCase, duration },
    });
  const frame = roof.type === 'bows' || roof.type === 'rafters' ? roof : undefined;
  const press = frame && mostPressed(analysis.responses, (response) => greatestPush(response, under.id));
  if (frame === undefined || press === undefined || under.joint !== undefined) return contacts;
  contacts.push({
    part: frame,
    member: frame.member,
    what: `each ${frame.type === 'bows' ? 'bow' : 'pair of rafters'} on the ${railNoun(under)}`,
    // Round on round touches in a point.
    length: rail !== undefined && isTimber(rail) ? widthOf(rail) : 0,
    width: widthOf(frame.member),
    press,
  });
  return contacts;
}

const greatestPush = ({ reactions }: Response, rail: string): number =>
  Math.max(0, ...reactions.flatMap(({ part, vertical }) => (part === rail ? [vertical] : [])));

/** The combination that presses most; undefined where nothing presses. */
function mostPressed(
  responses: readonly Response[],
  measure: (response: Response) => number,
): Press | undefined {
  let worst: Press | undefined;
  for (const response of responses) {
    if (response.load.use === 'service' || response.status !== 'holds') continue;
    const force = measure(response);
    if (force > (worst?.force ?? 0))
      worst = { force, loadCase: response.load.title, duration: response.load.duration };
  }
  return worst;
}
