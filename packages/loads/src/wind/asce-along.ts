/** ASCE 7-16: wind along the ridge. */
import { given, type Step } from '../step.ts';
import { freeRoofAlong, parallelCoefficients } from './asce-coefficients.ts';
import { GUST_EFFECT, INSIDE, netStep } from './asce-net.ts';
import type { Outline } from './shape.ts';
import type { WindCase, WindShape, WindZone } from './wind-case.ts';

/** Wind along the ridge, at the windward end: the greatest lift of the end bows, and the push on an end. */
export function asceAlongCase(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
): WindCase {
  const open = outline.enclosure === 'open';
  const ratio = outline.meanHeight / shape.length;
  const cp = open ? freeRoofAlong(outline.obstructed).uplift : parallelCoefficients(ratio)[0]![2];
  const inside = INSIDE[outline.enclosure];
  const net = q * (GUST_EFFECT * cp - inside);
  const source = open ? 'asce7-16:27.3-7' : 'asce7-16:27.3-1';
  const zones: WindZone[] = [{ surface: 'roof', from: 0, to: 1, net }];
  if (outline.walls && !open) {
    const side = outline.wallShare * q * (GUST_EFFECT * -0.7 - inside);
    zones.push({ surface: 'windward-wall', from: 0, to: 1, net: side });
    zones.push({ surface: 'leeward-wall', from: 0, to: 1, net: side });
  }
  const force = alongForce(q, shape, outline);
  return {
    id: 'along-uplift',
    title: 'Wind along the house, lift at the windward end',
    direction: 'along',
    zones,
    alongForce: force.value,
    steps: [
      ...pressureSteps,
      open
        ? {
            ...netStep([0, 1, cp], 0, q, net, source),
            formula: 'p = q_h G C_N',
          }
        : netStep([0, 1, cp], inside, q, net, source),
      force,
    ],
    source,
  };
}

function alongForce(q: number, shape: WindShape, outline: Outline): Step {
  if (shape.ends === 'clad') {
    const inside = INSIDE[outline.enclosure];
    return {
      symbol: 'F_end',
      meaning: 'push on the windward end',
      formula: 'F = q_h (G 0.8 + GC_pi) A_end',
      inputs: [
        given('q_h', 'velocity pressure', q, 'pressure'),
        given('A_end', 'area of the end', outline.endArea, 'area'),
        given('GC_pi', 'suction inside', inside, 'ratio'),
      ],
      value: q * (GUST_EFFECT * 0.8 + inside) * outline.endArea,
      kind: 'force',
      source: 'asce7-16:27.3-1',
    };
  }
  const surface = outline.developed * shape.length * (outline.enclosure === 'open' ? 2 : 1);
  return {
    symbol: 'F_drag',
    meaning: 'drag of the wind along the skin (open ends)',
    formula: 'F = c_fr q A',
    inputs: [
      given('c_fr', 'friction of a ribbed skin', 0.04, 'ratio'),
      given('q', 'velocity pressure', q, 'pressure'),
      given('A', 'skin swept', surface, 'area'),
    ],
    value: 0.04 * q * surface,
    kind: 'force',
    source: 'en1991-1-4:7.5',
  };
}
