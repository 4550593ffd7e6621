import { WATER } from '../ponding.ts';
import { factor } from '../skyline.ts';
import { assemble, emptyPass } from './assemble.ts';
import { layLoads } from './loads.ts';
import type { PlaneModel, PlaneState } from './model.ts';
import { emptyWater, type RoofLine, wetMatrix } from './pond.ts';
import { BEAM, type PlaneSystem, planeSystem } from './system.ts';

/**
 * How many times heavier water would have to be for the roof line, wet all along, to pond without end: smallest
 * factor on γ at which the tangent less γ·b·∫N·Nᵀ is singular. Below 1 the line is ponding-critical. Infinity
 * when no factor up to 1e6 does it. Null when the starting state itself is not stable.
 */
export function pondingFactor(
  model: PlaneModel,
  roof: RoofLine,
  start?: PlaneState,
  weight = WATER,
): number | null {
  const system = planeSystem(model);
  if (typeof system === 'string' || roofFault(system, roof)) return null;
  const u = new Float64Array(system.dofs);
  if (start) u.set([...start.displacements, ...start.endRotations]);
  const loads = layLoads(system, start?.loads ?? {});
  if (typeof loads === 'string') return null;
  const pass = emptyPass(system);
  assemble(system, u, loads, pass, true);
  const stiff = system.matrix.values.slice();
  const wet = wetMatrix({ system, roof, weight, loads, pass, water: emptyWater(system, roof) }, u);
  const stable = (times: number): boolean => {
    for (let k = 0; k < stiff.length; k++) system.matrix.values[k] = stiff[k]! - times * weight * wet[k]!;
    const pivots = factor(system.matrix);
    return pivots.negative === 0 && pivots.vanished < 0;
  };
  if (!stable(0)) return null;
  let low = 0;
  let high = 1e-6;
  while (stable(high)) {
    low = high;
    high *= 2;
    if (high > 1e6) return Number.POSITIVE_INFINITY;
  }
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (stable(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What is wrong with a roof line as a place for water; undefined when nothing is. */
export function roofFault(system: PlaneSystem, roof: RoofLine): string | undefined {
  if (!(roof.breadth > 0 && Number.isFinite(roof.breadth))) return 'the roof line drains no breadth';
  if (roof.elements.length === 0) return 'the roof line has no members';
  for (const [n, e] of roof.elements.entries()) {
    if (!(e >= 0 && e < system.elements)) return `the roof line names element ${e}, which is not there`;
    if (system.kind[e] !== BEAM) return `element ${e} of the roof line does not bend`;
    if (n > 0 && system.model.elements[roof.elements[n - 1]!]!.j !== system.model.elements[e]!.i)
      return 'the roof line is not one continuous line';
  }
  return undefined;
}
