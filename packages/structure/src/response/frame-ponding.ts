import { type PlaneResult, WATER } from '@tautline/mechanics';
import type { CombinedLoad, LineLoad } from '../actions/load-case.ts';
import { type CrownPocket, crownPocket } from '../film/crown-pocket.ts';
import { goOn } from '../stages.ts';
import type { BuiltState, Response } from './response.ts';
import { balance, statusOf } from './solve.ts';
import type { Solve } from './solved-frames.ts';

/**
 * Standing water and a frame that gives under it. The water W (N on one frame) is raised in steps on the
 * crown; at each step the bent shape says how much water its pocket could hold, γV(W). Water keeps
 * gathering while γV(W) > W. So the pocket would have to be λ = max W/γV(W) times as large for the pond
 * to run away: λ ≤ 1 is a runaway, λ > 1 comes to rest at the first W with W = γV(W).
 */
export interface FramePonding {
  readonly verdict: 'drains' | 'comes to rest' | 'runs away' | 'no answer';
  /** Water of the first pocket on the undeflected frame, N per frame. */
  readonly firstWater: number;
  /** Water at rest, N per frame (not for a runaway). */
  readonly atRest?: number;
  /** Largest pocket multiplier the frame can still bring to rest. */
  readonly reserve: number;
  /** Water from which on the pond feeds itself, N per frame. */
  readonly tippingWater?: number;
  /** Fall of the crown at the tipping water or at rest, m. */
  readonly crownFall: number;
  readonly pocket: CrownPocket;
  readonly trail: readonly {
    readonly water: number;
    readonly held: number;
    readonly crownFall: number;
    readonly status: Response['status'];
  }[];
}

/** Water steps as multiples of the first pocket. */
const ladder = [0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.9, 1.05, 1.3, 1.7, 2.3, 3.2, 4.5, 6.5];

/** Throws `Cancelled` when told to stop. */
export function framePonding(
  built: BuiltState,
  base: CombinedLoad,
  sag: number,
  stop: () => boolean = () => false,
  solve?: Solve,
): FramePonding {
  const { system } = built;
  const roofNodes = roofLineNodes(built);
  const still = lineOf(built, roofNodes, built.result);
  const first = crownPocket(still, sag, system.tributary);
  const firstWater = first.volume * WATER;
  const nothing = {
    firstWater,
    reserve: Number.MAX_VALUE,
    crownFall: 0,
    pocket: first,
    trail: [],
  };
  if (sag <= 0 || firstWater < 1e-3) return { verdict: 'drains', ...nothing };

  const crown = still.reduce((best, point, index) => (point.y > still[best]!.y ? index : best), 0);
  const trail: {
    water: number;
    held: number;
    crownFall: number;
    status: Response['status'];
  }[] = [];
  let pocket = first;
  let held = firstWater;
  let reserve = 0;
  let tipping = 0;
  let tippingFall = 0;
  let atRest: number | undefined;
  let restFall = 0;
  let previous = { water: 0, held: firstWater, fall: 0 };
  for (const multiple of ladder) {
    const water = multiple * firstWater;
    const lines = waterOn(built, base, pocket, water);
    const result = balance(built, { lines, points: base.points }, { cancelled: stop, solve });
    goOn(stop);
    const status = statusOf(result);
    if (status !== 'holds') {
      trail.push({
        water,
        held,
        crownFall: previous.fall,
        status,
      });
      // Without an answer at the very first step nothing is known; later the last step that held decides.
      if (tipping === 0) tipping = water;
      if (trail.length === 1 && status === 'no answer')
        return { verdict: 'no answer', ...nothing, reserve: 0 };
      break;
    }
    const line = lineOf(built, roofNodes, result);
    const next = crownPocket(line, sag, system.tributary);
    held = next.volume * WATER;
    const fall = still[crown]!.y - line[crown]!.y;
    trail.push({ water, held, crownFall: fall, status });
    if (atRest === undefined && held <= water) {
      const over = previous.held - previous.water;
      const share = over / (over + (water - held));
      atRest = previous.water + share * (water - previous.water);
      restFall = previous.fall + share * (fall - previous.fall);
    }
    if (water / Math.max(held, 1e-9) > reserve) {
      reserve = water / Math.max(held, 1e-9);
      tipping = water;
      tippingFall = fall;
    }
    if (next.volume > 0) pocket = next;
    previous = { water, held, fall };
  }
  if (atRest === undefined) {
    return {
      verdict: 'runs away',
      firstWater,
      reserve,
      tippingWater: tipping,
      crownFall: tippingFall,
      pocket,
      trail,
    };
  }
  return {
    verdict: 'comes to rest',
    firstWater,
    atRest,
    reserve,
    tippingWater: tipping,
    crownFall: restFall,
    pocket,
    trail,
  };
}

/** Where the nodes of the roof line are in an answer. */
function lineOf(
  { system }: BuiltState,
  roofNodes: readonly number[],
  { displacements }: Pick<PlaneResult, 'displacements'>,
): { x: number; y: number }[] {
  return roofNodes.map((node) => {
    const { x, y } = system.nodes[node]!;
    const { dx, dy } = displacements[node]!;
    return { x: x + dx, y: y + dy };
  });
}

/** Nodes of the roof line from left to right. */
export function roofLineNodes(built: BuiltState): number[] {
  const { system } = built;
  const elements = system.roof.map((index) => system.model.elements[index]!);
  return elements.length === 0 ? [] : [elements[0]!.i, ...elements.map((element) => element.j)];
}

/** The line loads of the base with the pocket's water on top, spread over the roof as deep as it stands. */
function waterOn(built: BuiltState, base: CombinedLoad, pocket: CrownPocket, water: number): LineLoad[] {
  const { system } = built;
  const shares = system.roof.map((index, k) => {
    const element = system.elements[index]!;
    return ((pocket.depths[k]! + pocket.depths[k + 1]!) / 2) * Math.abs(element.dx);
  });
  const total = shares.reduce((sum, share) => sum + share, 0);
  const extra = new Map<number, number>();
  system.roof.forEach((index, k) => {
    extra.set(index, total > 0 ? (water * shares[k]!) / total / system.elements[index]!.length : 0);
  });
  const own = new Map(base.lines.map((line) => [line.element, line]));
  return system.elements.map((_, element) => ({
    element,
    wx: own.get(element)?.wx ?? 0,
    wy: (own.get(element)?.wy ?? 0) - (extra.get(element) ?? 0),
  }));
}
