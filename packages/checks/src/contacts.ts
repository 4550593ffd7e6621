/** Where one member lies on another and presses it: the places, how large they are, and what presses there. */
import type { Duration } from '@tautline/loads';
import {
  type MemberItem,
  type Part,
  type Posts,
  type Rail,
  railsUnder,
  type Shelter,
} from '@tautline/shelter';
import type { Response } from '@tautline/structure';
import type { CheckInput } from './check.ts';
import { type RailDemands, railDemands, railNoun } from './rails.ts';

/** A press on one place of contact. */
export interface Press {
  /** N */
  readonly force: number;
  readonly loadCase: string;
  readonly duration: Duration;
}

export interface Contact {
  readonly part: Part;
  /** The member that is pressed from its side. */
  readonly member: MemberItem;
  /** e.g. 'the eave rail on each side post' */
  readonly what: string;
  /** Of the place, along the pressed member and across it, m. */
  readonly length: number;
  readonly width: number;
  /** What presses there in one combination; undefined where nothing does. */
  readonly press: (response: Response) => Press | undefined;
  /** Without wind and beside the combinations. */
  readonly calm: readonly Press[];
}

type Pressing = Pick<CheckInput, 'shelter' | 'frame'>;

/** Every place where the frame, a rail or a ridge lies on what carries it. */
export function contactsOf(input: Pressing): readonly Contact[] {
  return [...atEave(input.shelter), ...underRoof(input)];
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

/** Places under the eave rail and on it; a force is what one combination presses there with, N. */
function atEave(shelter: Shelter): Contact[] {
  const { sidePosts, eaveRail, roof } = shelter;
  if (sidePosts === undefined || eaveRail === undefined || eaveRail.member.kind === 'cable') return [];
  // A fitting takes hold of both, and neither lies on the other.
  if (sidePosts.topJoint !== undefined) return [];
  const rail = eaveRail.member;
  const share = Math.min(1, roof.spacing / sidePosts.spacing);
  const onPost: Contact = {
    part: eaveRail,
    member: rail,
    what: 'the eave rail on each side post',
    ...seat(sidePosts, rail),
    press: pressed((response) => headPress(response, sidePosts.id)),
    calm: [],
  };
  if (roof.type !== 'rafters' || !isTimber(roof.member) || !isTimber(rail)) return [onPost];
  return [
    onPost,
    {
      part: roof,
      member: roof.member,
      what: 'each rafter on the eave rail',
      length: widthOf(rail),
      width: widthOf(roof.member),
      press: pressed((response) => share * headPress(response, sidePosts.id)),
      calm: [],
    },
  ];
}

const pressed =
  (force: (response: Response) => number): Contact['press'] =>
  (response) => {
    const found = force(response);
    return found > 0
      ? { force: found, loadCase: response.load.title, duration: response.load.duration }
      : undefined;
  };

/** Places along a post nearer to its top than this are its head, m: own choice, for rounding. */
const headTolerance = 1e-6;

/** What presses the head of the harder pressed of a row's posts down: the thrust at its top. */
function headPress({ forces }: Response, part: string): number {
  const own = forces.filter((force) => force.part === part);
  const top = Math.max(...own.map(({ at }) => at));
  return Math.max(0, ...own.filter(({ at }) => at > top - headTolerance).map(({ axial }) => -axial));
}

function underRoof(input: Pressing): Contact[] {
  return railsUnder(input.shelter).flatMap((rail) =>
    onRailUnder(input.shelter, rail, railDemands(input, rail)),
  );
}

/** A ridge or an inner rail on its posts, and the frames on it. */
function onRailUnder({ roof }: Shelter, under: Rail, { inResponse, calm }: RailDemands): Contact[] {
  const contacts: Contact[] = [];
  const rail = under.member.kind === 'cable' ? undefined : under.member;
  const onPost = ({ down, loadCase, duration }: Omit<Press, 'force'> & { readonly down: number }): Press => ({
    force: down,
    loadCase,
    duration,
  });
  if (rail !== undefined && under.posts !== undefined)
    contacts.push({
      part: under,
      member: rail,
      what: `the ${railNoun(under)} on each of its posts`,
      ...seat(under.posts, rail),
      press: (response) => {
        const demand = inResponse(response);
        return demand && onPost(demand.post);
      },
      calm: calm.map(({ post }) => onPost(post)),
    });
  if ((roof.type !== 'bows' && roof.type !== 'rafters') || under.joint !== undefined) return contacts;
  contacts.push({
    part: roof,
    member: roof.member,
    what: `each ${roof.type === 'bows' ? 'bow' : 'pair of rafters'} on the ${railNoun(under)}`,
    // Round on round touches in a point.
    length: rail !== undefined && isTimber(rail) ? widthOf(rail) : 0,
    width: widthOf(roof.member),
    press: pressed((response) => greatestPush(response, under.id)),
    calm: [],
  });
  return contacts;
}

const greatestPush = ({ reactions }: Response, rail: string): number =>
  Math.max(0, ...reactions.flatMap(({ part, vertical }) => (part === rail ? [vertical] : [])));
