import type { PlaneLoads } from './model.ts';
import type { PlaneSystem } from './system.ts';

/** Loads laid out on a system: forces on dofs, fixed-direction and follower line loads on elements. */
export interface LoadSet {
  readonly nodal: Float64Array;
  readonly wx: Float64Array;
  readonly wy: Float64Array;
  readonly follower: Float64Array;
}

export const emptyLoads = (system: PlaneSystem): LoadSet => ({
  nodal: new Float64Array(system.dofs),
  wx: new Float64Array(system.elements),
  wy: new Float64Array(system.elements),
  follower: new Float64Array(system.elements),
});

/** Lays loads out; a sentence says which load cannot be placed. */
export function layLoads(system: PlaneSystem, loads: PlaneLoads): LoadSet | string {
  const set = emptyLoads(system);
  for (const load of loads.nodal ?? []) {
    const moment = load.m ?? 0;
    if (!(load.node >= 0 && load.node < system.nodes))
      return `a load stands on node ${load.node}, which is not there`;
    if (![load.fx, load.fy, moment].every(Number.isFinite))
      return `the load on node ${load.node} is not finite`;
    set.nodal[3 * load.node]! += load.fx;
    set.nodal[3 * load.node + 1]! += load.fy;
    set.nodal[3 * load.node + 2]! += moment;
    if (moment !== 0 && !carriesMoment(system, 3 * load.node + 2))
      return `node ${load.node} has nothing that takes a moment`;
  }
  for (const { element, wx, wy } of loads.line ?? []) {
    if (!(element >= 0 && element < system.elements))
      return `a load stands on element ${element}, which is not there`;
    if (!Number.isFinite(wx) || !Number.isFinite(wy)) return `the load on element ${element} is not finite`;
    set.wx[element]! += wx;
    set.wy[element]! += wy;
  }
  for (const { element, p, follower } of loads.pressure ?? []) {
    if (!(element >= 0 && element < system.elements))
      return `a load stands on element ${element}, which is not there`;
    if (!Number.isFinite(p)) return `the pressure on element ${element} is not finite`;
    if (follower) set.follower[element]! += p;
    else {
      // amount on the drawn chord, given per unstressed length: p·chord/rest along the left normal
      set.wx[element]! += (-p * system.chordY[element]!) / system.rest[element]!;
      set.wy[element]! += (p * system.chordX[element]!) / system.rest[element]!;
    }
  }
  return set;
}

const carriesMoment = (system: PlaneSystem, dof: number) =>
  system.equation[dof]! >= 0 || system.prescribed.some((p) => p.dof === dof);

/** target = from + t·(to - from), for any t. */
export function blend(target: LoadSet, from: LoadSet, to: LoadSet, t: number): void {
  for (const key of ['nodal', 'wx', 'wy', 'follower'] as const) {
    const out = target[key];
    const a = from[key];
    const b = to[key];
    for (let k = 0; k < out.length; k++) out[k] = a[k]! + t * (b[k]! - a[k]!);
  }
}

/** Loads between `from` and `to`, t of the way (beyond 1: carried on). */
export function between(from: PlaneLoads, to: PlaneLoads, t: number): PlaneLoads {
  const both = <T>(
    key: (loads: PlaneLoads) => readonly T[] | undefined,
    times: (load: T, by: number) => T,
  ): T[] => [
    ...(t === 1 ? [] : (key(from) ?? []).map((load) => times(load, 1 - t))),
    ...(t === 0 ? [] : (key(to) ?? []).map((load) => times(load, t))),
  ];
  return {
    nodal: both(
      (l) => l.nodal,
      (l, k) => ({
        node: l.node,
        fx: k * l.fx,
        fy: k * l.fy,
        m: k * (l.m ?? 0),
      }),
    ),
    line: both(
      (l) => l.line,
      (l, k) => ({ element: l.element, wx: k * l.wx, wy: k * l.wy }),
    ),
    pressure: both(
      (l) => l.pressure,
      (l, k) => ({ ...l, p: k * l.p }),
    ),
  };
}
