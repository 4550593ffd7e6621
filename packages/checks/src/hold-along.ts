/** What holds a house along its length: braces and guys, or clamped feet, against the wind along it. */
import { groundAllowedAt } from '@tautline/loads';
import {
  type Brace,
  type CableItem,
  type Foot,
  type MemberItem,
  postRows,
  type Shelter,
} from '@tautline/shelter';
import { sectionOf, windOn } from '@tautline/structure';
import { windFactor } from './basis.ts';
import type { Finding } from './finding.ts';
import { footUplift } from './ground.ts';
import { footSideways } from './ground-sideways.ts';
import { given, step } from './judge.ts';
import { inSoil, memberLimit } from './resistance.ts';
import { cableWorking } from './rigging.ts';

/** Push along the house at roof level, at the level of the combinations. */
export interface Push {
  /** On the whole end or skin, N, and the height it acts at, m. */
  readonly force: number;
  readonly height: number;
  readonly title: string;
  readonly source: string;
}

export function pushAlong(shelter: Shelter): Push | undefined {
  const wind = windOn(shelter).cases.find((entry) => entry.alongForce !== undefined);
  if (wind?.alongForce === undefined) return undefined;
  return {
    force: windFactor(shelter.site) * wind.alongForce,
    height: (shelter.roof.springing + shelter.roof.rise) / 2,
    title: wind.title,
    source: wind.source,
  };
}

/** Bracing as a whole: what share of its hold the wind asks for, and by what it is limited. */
export interface Hold {
  readonly part: { readonly id: string; readonly origin: Brace['origin'] };
  readonly demand: number;
  readonly capacity: number;
  readonly what: string;
  readonly steps: Finding['steps'];
  readonly source: string;
}

/** Length and level run of one brace along the house, m. */
function runOf(brace: Brace): { length: number; level: number; height: number } {
  const dx = brace.to.x - brace.from.x;
  const dy = brace.to.y - brace.from.y;
  const dz = brace.to.z - brace.from.z;
  return { length: Math.hypot(dx, dy, dz), level: Math.abs(dz), height: Math.max(brace.from.y, brace.to.y) };
}

/** Pull that a brace or guy may take itself, N. */
export function pullOf(shelter: Shelter, member: MemberItem | CableItem): number {
  if (member.kind === 'cable') return cableWorking(member);
  return memberLimit(shelter.site, member, 'gust').tension * sectionOf(member).area;
}

export function onBraces(
  shelter: Shelter,
  brace: Brace,
  push: Push,
  share: number,
): Hold | { reason: string } {
  const { length, level, height } = runOf(brace);
  if (level < 1e-6 || height <= 0) return { reason: 'the braces run straight up, and so hold nothing along' };
  // Of those that lean opposite ways only the ones that are pulled are counted on: half of up to four, the fewer of
  // the two ways where braces stand in every bay of both sides.
  const pulled = brace.role === 'guy' || brace.count <= 4 ? brace.count / 2 : 2 * Math.floor(brace.count / 4);
  const top = (share * push.force * push.height) / height;
  const wind = (top * length) / (level * pulled);
  // Both wires of a pair share the push until the one that is let go hangs slack.
  const setUp = brace.member.kind === 'cable' ? (brace.tension ?? 0) : 0;
  const pull = Math.max(wind, setUp + wind / 2);
  const own = pullOf(shelter, brace.member);
  let capacity = own;
  let what = `${brace.member.title} itself`;
  let steps: Finding['steps'] = [];
  if (brace.role === 'guy' && brace.foot !== undefined) {
    const held = footUplift(
      brace.foot,
      brace.member.kind === 'cable' ? undefined : brace.member,
      shelter.site,
      'gust',
    );
    if ('reason' in held) return held;
    // The anchor is pulled along the wire; what it holds upright is set against the upright share.
    const upright = Math.abs(brace.to.y - brace.from.y) / length;
    const anchor = groundAllowedAt(held, shelter.site.basis) / Math.max(upright, 0.1);
    steps = held.steps;
    if (anchor < capacity) {
      capacity = anchor;
      what = 'its anchor';
    }
  }
  return {
    part: brace,
    demand: pull,
    capacity,
    what,
    source: 'statics',
    steps: [
      step(
        'H',
        'push at the top of the braces',
        'H = F h / h_b',
        [
          given('F', 'push of the wind along the house', share * push.force, 'force'),
          given('h', 'height it acts at, half way up', push.height, 'length'),
          given('h_b', 'height of the braces', height, 'length'),
        ],
        top,
        'force',
        'statics',
      ),
      step(
        'N',
        'pull of one brace',
        'N = H / (n cos α)',
        [
          given('n', 'braces that are pulled: half of them', pulled, 'count'),
          given('cos α', 'level run over length', level / length, 'ratio'),
        ],
        wind,
        'force',
        'statics',
      ),
      ...(setUp > 0
        ? [
            step(
              'T',
              'pull with what the wires were pulled up to; the other wire of a pair lets go as this one is pulled',
              'T = max(N, T_0 + N / 2)',
              [
                given('N', 'pull by the wind', wind, 'force'),
                given('T_0', 'pull it is pulled up to', setUp, 'force'),
              ],
              pull,
              'force',
              'statics',
            ),
          ]
        : []),
      ...steps,
    ],
  };
}

/** Feet that keep bows and posts upright along the house, by kind. */
function uprights(shelter: Shelter): { foot: Foot; member: MemberItem; count: number; height: number }[] {
  const { roof } = shelter;
  const list: { foot: Foot; member: MemberItem; count: number; height: number }[] = [];
  const top = roof.springing + roof.rise;
  if (roof.type === 'bows' && roof.foot?.fixity === 'clamped')
    list.push({ foot: roof.foot, member: roof.member, count: 2 * roof.stations.length, height: top });
  for (const posts of postRows(shelter)) {
    if (posts.foot.fixity === 'clamped')
      list.push({
        foot: posts.foot,
        member: posts.member,
        count: posts.lines.length * posts.stations.length,
        height: posts.height,
      });
  }
  return list;
}

/** What all clamped feet hold against a push at a height, N: each by its member or by its soil, whichever is less. */
export function heldByFeet(shelter: Shelter, push: Push): number {
  return uprights(shelter).reduce((sum, { foot, member, count }) => {
    const { height } = push;
    const section = sectionOf(member);
    const weak =
      member.section.shape === 'rectangle'
        ? (member.section.depth * member.section.breadth ** 2) / 6
        : section.sectionModulus;
    const bent = (memberLimit(shelter.site, member, 'gust', inSoil(foot)).bending * weak) / height;
    const soil = footSideways(foot, member, shelter.site, { push: 1, moment: height, lift: 0, stay: 'gust' });
    if ('reason' in soil) return sum;
    return sum + count * Math.min(bent, groundAllowedAt(soil, shelter.site.basis));
  }, 0);
}
