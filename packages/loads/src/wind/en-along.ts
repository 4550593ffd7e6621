/** EN 1991-1-4: wind along the ridge. */
import { given, type Step } from '../step.ts';
import { alongCase, skinDrag } from './along-ridge.ts';
import { canopyCoefficients, ridgewiseEnd, wallCoefficients } from './en-coefficients.ts';
import { insideOf, netStep } from './en-net.ts';
import type { Outline } from './shape.ts';
import type { WindCase, WindShape } from './wind-case.ts';

/** Lift at the windward end, and the push on an end. `notCovered` is added to. */
export function enAlongCase(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
  notCovered: string[],
): WindCase {
  const open = outline.enclosure === 'open';
  if (shape.form === 'arch' && !open) {
    notCovered.push('Vaults with the wind along them: taken as a duopitch roof of the same rise.');
  }
  const mono = shape.form === 'single-slope';
  const cp = open
    ? canopyCoefficients(
        mono ? 'mono' : 'duo',
        outline.pitch,
        shape.sides === 'screened' ? 1 : (shape.blockage ?? 0),
      ).min
    : ridgewiseEnd(mono ? 'mono' : 'duo', outline.pitch).behind;
  const inside = open ? 0 : insideOf(outline).along;
  const source = open
    ? mono
      ? 'en1991-1-4:7.3-mono'
      : 'en1991-1-4:7.3-duo'
    : mono
      ? 'en1991-1-4:7.3b'
      : 'en1991-1-4:7.2.5';
  const net = q * (cp - inside);
  return alongCase(outline, {
    roof: net,
    // Side wall zone B behind the edge strip, table 7.1.
    side: q * (-0.8 - inside),
    steps: [...pressureSteps, netStep([0, 1, cp], inside, q, net, source)],
    force: shape.ends === 'clad' ? endForce(q, shape, outline) : skinDrag(q, shape, outline),
    source,
  });
}

function endForce(q: number, shape: WindShape, outline: Outline): Step {
  const cp = wallCoefficients(outline.ridgeHeight / shape.length).windward;
  const inside = outline.enclosure === 'open' ? 0 : -insideOf(outline).across[1];
  return {
    symbol: 'F_end',
    meaning: 'push on the windward end',
    formula: 'F = q_p (c_pe + c_pi) A_end',
    inputs: [
      given('q_p', 'peak velocity pressure', q, 'pressure'),
      given('c_pe', 'windward wall (table 7.1)', cp, 'ratio'),
      given('c_pi', 'suction inside', inside, 'ratio'),
      given('A_end', 'area of the end', outline.endArea, 'area'),
    ],
    value: q * (cp + inside) * outline.endArea,
    kind: 'force',
    source: 'en1991-1-4:7.2.2',
  };
}
