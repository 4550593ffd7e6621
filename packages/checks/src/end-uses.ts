/** What uprights, feet and rails of the end frames take of their limits, from the whole house in space. */
import { type Duration, groundAllowedAt, type Step } from '@tautline/loads';
import type { EndFrames, MemberItem, Shelter, Site } from '@tautline/shelter';
import { type PieceForces, sectionOf, type UprightUnder } from '@tautline/structure';
import { sidewaysUse } from './checks/lateral-foot.ts';
import type { FrameFoot } from './feet.ts';
import { footUplift, holdUse } from './ground.ts';
import { footSinking } from './ground-sinking.ts';
import { pressedUse } from './pressed.ts';
import { inSoil, memberLimit } from './resistance.ts';
import { leastRadius } from './slender.ts';

/** A force along a piece (tension positive, N) and the bending with it (N·m), and what they come to. */
export interface PieceUse {
  readonly use: number;
  readonly axial: number;
  readonly moment: number;
  /** Bending stress it may have, Pa. */
  readonly allowed: number;
  readonly steps: readonly Step[];
}

interface Loaded {
  readonly axial: number;
  readonly moment: number;
  readonly title: string;
  readonly duration: Duration;
}

/** Bending with pull, or with thrust that may make it bow out. */
function pieceUse(
  site: Site,
  member: MemberItem,
  slenderness: number,
  wet: boolean,
  { axial, moment, title, duration }: Loaded,
): PieceUse {
  const section = sectionOf(member);
  const bending = Math.abs(moment) / section.sectionModulus;
  const limit = memberLimit(site, member, duration, wet);
  const plain = bending / limit.bending + Math.max(0, axial) / section.area / limit.tension;
  const pressed =
    axial < 0
      ? pressedUse(site, member, slenderness, wet)({ thrust: -axial, bending, loadCase: title, duration })
      : undefined;
  return {
    use: Math.max(plain, pressed?.both.utilisation ?? 0),
    axial,
    moment,
    allowed: limit.bending,
    steps: [...limit.steps, ...(pressed?.column.steps ?? [])],
  };
}

const largest = <T extends { readonly use: number }>(all: readonly T[]): T | undefined =>
  all.reduce<T | undefined>(
    (most, one) => (most === undefined || one.use > most.use ? one : most),
    undefined,
  );

export interface UprightUse extends PieceUse {
  readonly under: UprightUnder;
  readonly slenderness: number;
}

/** The hardest pressed place of all uprights; undefined without any load. */
export function uprightUse(
  { site }: Shelter,
  { member, foot, uprights }: EndFrames,
  loaded: readonly UprightUnder[],
): UprightUse | undefined {
  const slenderness = Math.max(...uprights.map(({ height }) => height)) / leastRadius(member);
  const wet = inSoil(foot);
  return largest(
    loaded.flatMap((under) =>
      under.forces.map((force): UprightUse => {
        const { title, duration } = under.load;
        return {
          ...pieceUse(site, member, slenderness, wet, { ...force, title, duration }),
          under,
          slenderness,
        };
      }),
    ),
  );
}

export interface RailUse extends PieceUse {
  readonly piece: PieceForces;
  readonly slenderness: number;
}

/** The rail of the two ends that is used more: its largest bending with its largest pull, or with its largest push. */
export function endRailUse(
  { site }: Shelter,
  { rail, uprights }: EndFrames,
  pieces: readonly PieceForces[],
): RailUse | undefined {
  if (rail === undefined) return undefined;
  const knots = uprights.filter(({ height }) => height >= rail.height).map(({ x }) => x);
  const held = [rail.from, ...knots, rail.to].sort((a, b) => a - b);
  const free = Math.max(...held.slice(1).map((x, n) => x - held[n]!));
  const slenderness = free / leastRadius(rail.member);
  return largest(
    pieces.flatMap((piece) =>
      [piece.pull, -piece.push].map((axial): RailUse => {
        const force = { axial, moment: piece.moment, title: piece.loadCase, duration: 'gust' as const };
        return { ...pieceUse(site, rail.member, slenderness, true, force), piece, slenderness };
      }),
    ),
  );
}

export interface EndFootUse {
  readonly use: number;
  readonly under: UprightUnder;
  readonly how: 'up' | 'over' | 'down';
}

export const endFoot = ({ foot, member, id, origin }: EndFrames): FrameFoot => ({
  foot,
  owner: { id, origin, member },
  noun: 'upright',
  frames: 1,
});

/** The foot that uses most of the ground: pulled up, pushed over or pressed in, undefined without loads. Or why that is not known. */
export function endFootUse(
  { site }: Shelter,
  ends: EndFrames,
  loaded: readonly UprightUnder[],
): EndFootUse | { readonly reason: string } | undefined {
  const { foot, member } = ends;
  const uplift = footUplift(foot, member, site, 'gust');
  if ('reason' in uplift) return uplift;
  const sinking = footSinking(foot, member, site, undefined);
  const holds = groundAllowedAt(uplift, site.basis);
  const held = endFoot(ends);
  const all: EndFootUse[] = [];
  for (const under of loaded) {
    const { reaction, load } = under;
    const over = sidewaysUse(site, held, reaction, load);
    if ('reason' in over) return over;
    all.push(
      { use: holdUse(-reaction.vertical, holds), under, how: 'up' },
      { use: over.utilisation, under, how: 'over' },
    );
    if (!('reason' in sinking))
      all.push({ use: holdUse(reaction.vertical, sinking.allowed), under, how: 'down' });
  }
  return largest(all);
}
