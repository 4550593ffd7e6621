/** What a joint between two members may be counted on for: its short-term strength with the factors of its material. */
import { given, type Step } from '../step.ts';
import { memberResistance } from './member.ts';
import type { MemberInput } from './member-input.ts';

export interface JointShare {
  /** Of the bending or pull at which the joint gives when tried once and new. */
  readonly share: number;
  readonly step: Step;
}

/**
 * Share of its short-term strength that a joint may be counted on for under a load that stays so long, at that heat.
 * Plastics, wood and bamboo: as the member itself, so with design factor, duration, heat and moisture. Metal: 1/1.67
 * of AISC 360 F1, 0.9, or 1 of EN 1993-1-1 6.1; a joint has no plastic reserve to add. Nothing is known of joints
 * alone: own choice that they have the factors of what they join.
 */
export function jointShare(input: MemberInput): JointShare {
  const metal = input.family === 'steel' || input.family === 'aluminium';
  const { bending, source, steps } = memberResistance(input);
  const factor = { 'asce7-asd': 1 / 1.67, 'asce7-strength': 0.9, eurocode: 1 }[input.basis];
  const share = metal ? factor : Math.min(1, bending / input.bendingStrength);
  const own = steps[0]!;
  return {
    share,
    step: {
      symbol: 'φ_j',
      meaning: 'share of its short-term strength a joint may be counted on for, as what it joins',
      formula: metal ? 'φ_j = 1 / Ω' : 'φ_j = min(1, f_b / f)',
      inputs: metal
        ? [given('Ω', 'factor of the material', 1 / factor, 'ratio')]
        : [
            given('f_b', 'bending stress the member may have for so long', own.value, 'stress'),
            given('f', 'strength of its material', input.bendingStrength, 'stress'),
          ],
      value: share,
      kind: 'percent',
      source: metal ? (input.basis === 'eurocode' ? 'en1993-1-1:6.2.1' : 'aisi-s100:f2.3') : source,
    },
  };
}
