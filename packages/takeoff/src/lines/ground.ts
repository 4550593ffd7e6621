/** Feet: stubs, anchors, concrete, ballast. */
import type { AnchorItem, Filled, Foot, MemberItem } from '@tautline/shelter';
import {
  countLine,
  cutLine,
  type Gap,
  looseLine,
  metres,
  type Takeoff,
  type TakeoffLine,
  type Told,
} from '../line.ts';
import { wholePacks } from '../prices.ts';
import { concreteLine, roomOf } from './sundries.ts';

/** Mass of a cubic metre of concrete, kg: EN 206 normal-weight concrete is 2000 to 2600 (from memory). */
const CONCRETE = 2400;

/** How much longer a member is cut because it goes into the ground itself, m. */
export function intoGround(foot: Foot | undefined): number {
  if (!foot || foot.stub) return 0;
  return ['driven', 'hole', 'concrete', 'deadman', 'poked'].includes(foot.kind) ? foot.driven : 0;
}

/** Everything bought for `count` equal feet; `set` stands in the hole. */
export function footLines(foot: Foot, count: number, set?: MemberItem): Takeoff {
  const lines: TakeoffLine[] = [];
  const gaps: Gap[] = [];
  if (foot.stub) {
    const length = foot.length ?? 2 * foot.driven;
    const why =
      foot.length === undefined
        ? (['stub as long above the ground as in it: ', metres(length)] as const)
        : (['stub of ', metres(length), ', ', metres(foot.driven), ' of it in the ground'] as const);
    const pieces = [{ length, count, note: 'stub' }];
    if (length > 0) lines.push(cutLine('ground', foot.stub, foot.stub.stockLengths, pieces, foot, [why]));
    else gaps.push({ what: 'the length of the stubs', origin: foot.origin });
  } else if (foot.kind === 'stub') {
    gaps.push({ what: 'the stubs: nothing says what they are made of', origin: foot.origin });
  }
  if (foot.anchor) lines.push(anchorLine(foot, foot.anchor, count));
  if (foot.kind === 'concrete') concrete(foot, count, foot.stub ?? set, lines, gaps);
  if (foot.kind === 'ballast' && !foot.anchor) {
    if (foot.mass === undefined) gaps.push({ what: 'the mass of the ballast', origin: foot.origin });
    else {
      const why = [`${count} feet with `, { value: foot.mass, kind: 'mass' }, ' each'] as const;
      lines.push(looseLine('ground', 'Ballast', 'mass', foot.mass * count, foot, why));
    }
  }
  if ((foot.kind === 'deadman' || foot.kind === 'screw') && !foot.anchor && !foot.stub) {
    gaps.push({
      what: `the ${foot.kind === 'screw' ? 'screw anchors' : 'deadmen'}: nothing says which`,
      origin: foot.origin,
    });
  }
  return { lines, gaps };
}

/** Anchors one to a foot; bags of ballast as many as make up the mass. */
function anchorLine(foot: Foot, anchor: AnchorItem, count: number): TakeoffLine {
  if (foot.kind !== 'ballast' || foot.mass === undefined || anchor.mass === undefined)
    return countLine('ground', anchor, count, foot, [`${count} anchors`]);
  const each = wholePacks(foot.mass, anchor.mass);
  return countLine('ground', anchor, each * count, foot, [
    `${count} feet with `,
    { value: foot.mass, kind: 'mass' },
    ` each, ${each} to a foot`,
  ]);
}

function concrete(
  foot: Foot,
  count: number,
  set: MemberItem | undefined,
  lines: TakeoffLine[],
  gaps: Gap[],
): void {
  if (foot.across !== undefined && foot.driven > 0) {
    const room = set === undefined ? 0 : roomOf(set);
    const one = Math.max(0, (Math.PI / 4) * foot.across ** 2 - room) * foot.driven;
    const why = [
      `${count} holes `,
      metres(foot.across),
      ' across and ',
      metres(foot.driven),
      ' deep',
      ...(set === undefined ? [] : [`, less what ${set.title} takes up in them`]),
    ];
    lines.push(concreteLine('ground', foot.mix, one * count, foot, why));
  } else if (foot.mass !== undefined) {
    const why: Told = [
      `${count} footings of `,
      { value: foot.mass, kind: 'mass' },
      ' at ',
      { value: CONCRETE, kind: 'density' },
    ];
    lines.push(concreteLine('ground', foot.mix, (foot.mass / CONCRETE) * count, foot, why));
  } else {
    gaps.push({
      what: 'the concrete: neither the width of the hole nor the mass is said',
      origin: foot.origin,
    });
  }
}

/** What fills a hollow member over `length`, in `count` members. */
export function fillingLines(
  filled: Filled,
  host: MemberItem,
  length: number,
  count: number,
  part: Foot | { readonly id: string; readonly origin: Foot['origin'] },
): Takeoff {
  const lines: TakeoffLine[] = [];
  const gaps: Gap[] = [];
  if (filled.member) {
    const steps = [[`${count} times `, metres(length), ' inside ', host.title]];
    const pieces = [{ length, count, note: 'inside' }];
    lines.push(cutLine('frame', filled.member, filled.member.stockLengths, pieces, part, steps));
  }
  if (filled.with === 'concrete') {
    const bore = boreOf(host);
    if (bore === undefined)
      gaps.push({ what: 'the concrete inside a member that is not a pipe', origin: part.origin });
    else {
      // A bar inside takes up room that the concrete does not fill.
      const bar = filled.member ? solidArea(filled.member) : 0;
      const area = Math.max(0, (Math.PI / 4) * bore ** 2 - bar);
      const why = [
        'bore ',
        { value: bore, kind: 'thickness' },
        ...(bar > 0 ? [' less what is put inside'] : []),
        ', ',
        metres(length),
        `, ${count} times`,
      ] as const;
      lines.push(concreteLine('frame', filled.mix, area * length * count, part, why));
    }
  } else if (!filled.member) {
    gaps.push({ what: `the ${filled.with} inside: nothing says which`, origin: part.origin });
  }
  return { lines, gaps };
}

const boreOf = ({ section }: MemberItem): number | undefined =>
  section.shape === 'round-hollow' ? section.outside - 2 * section.wall : undefined;

/** Area a bar takes up, m2; a pipe is open inside and takes up its wall only. */
function solidArea({ section }: MemberItem): number {
  if (section.shape === 'rectangle') return section.depth * section.breadth;
  const outer = (Math.PI / 4) * section.outside ** 2;
  return section.shape === 'round-solid'
    ? outer
    : outer - (Math.PI / 4) * (section.outside - 2 * section.wall) ** 2;
}
