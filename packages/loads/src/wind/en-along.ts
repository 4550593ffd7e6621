/** EN 1991-1-4: wind along the ridge. */
import { given, type Step } from '../step.ts';
import { canopyCoefficients, ridgewiseSlope, wallCoefficients } from './en-coefficients.ts';
import { insideOf, netStep } from './en-net.ts';
import type { Outline } from './shape.ts';
import type { WindCase, WindShape, WindZone } from './wind-case.ts';

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
    ? canopyCoefficients(mono ? 'mono' : 'duo', outline.pitch, outline.obstructed ? 1 : (shape.blockage ?? 0))
        .min
    : ridgewiseSlope(outline.pitch);
  const inside = open ? 0 : insideOf(outline).along;
  const source = open ? (mono ? 'en1991-1-4:7.3-mono' : 'en1991-1-4:7.3-duo') : 'en1991-1-4:7.2.5';
  const zones: WindZone[] = [{ surface: 'roof', from: 0, to: 1, net: q * (cp - inside) }];
  if (outline.walls && !open) {
    // Side wall zone B behind the edge strip, table 7.1.
    const side = outline.wallShare * q * (-0.8 - inside);
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
    steps: [...pressureSteps, netStep([0, 1, cp], inside, q, q * (cp - inside), source), force],
    source,
  };
}

function alongForce(q: number, shape: WindShape, outline: Outline): Step {
  if (shape.ends === 'clad') {
    const cp = wallCoefficients(outline.ridgeHeight / shape.length).windward;
    const inside = outline.enclosure === 'open' ? 0 : -insideOf(outline).across[1];
    return {
      symbol: 'F_end',
      meaning: 'push on the windward end',
      formula: 'F = q_p (c_pe + 0.3) A_end',
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
  const surface = outline.developed * shape.length * (outline.enclosure === 'open' ? 2 : 1);
  return {
    symbol: 'F_fr',
    meaning: 'drag of the wind along the skin (open ends)',
    formula: 'F = c_fr q_p A',
    inputs: [
      given('c_fr', 'friction of a ribbed skin (table 7.10)', 0.04, 'ratio'),
      given('q_p', 'peak velocity pressure', q, 'pressure'),
      given('A', 'skin swept', surface, 'area'),
    ],
    value: 0.04 * q * surface,
    kind: 'force',
    source: 'en1991-1-4:7.5',
  };
}
