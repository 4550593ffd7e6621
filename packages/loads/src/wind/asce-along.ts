/** ASCE 7-16: wind along the ridge. */
import { given, type Step } from '../step.ts';
import { alongCase, skinDrag } from './along-ridge.ts';
import { freeRoofAlong, parallelCoefficients } from './asce-coefficients.ts';
import { GUST_EFFECT, INSIDE, netStep } from './asce-net.ts';
import type { Outline } from './shape.ts';
import type { WindCase, WindShape } from './wind-case.ts';

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
  const met = open
    ? { ...netStep([0, 1, cp], 0, q, net, source), formula: 'p = q_h G C_N' }
    : netStep([0, 1, cp], inside, q, net, source);
  return alongCase(outline, {
    roof: net,
    side: q * (GUST_EFFECT * -0.7 - inside),
    steps: [...pressureSteps, met],
    force: shape.ends === 'clad' ? endForce(q, outline) : skinDrag(q, shape, outline),
    source,
  });
}

function endForce(q: number, outline: Outline): Step {
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
