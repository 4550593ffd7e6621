/** Stress in a member from its section forces. */
import type { MemberItem } from '@tautline/shelter';
import { type FrameAnalysis, type Response, type SectionForce, sectionOf } from '@tautline/structure';

export interface StressedPlace {
  readonly response: Response;
  readonly force: SectionForce;
  /** |N|/A and |M|/W, Pa. */
  readonly axialStress: number;
  readonly bendingStress: number;
}

export function stressAt(member: MemberItem, response: Response, force: SectionForce): StressedPlace {
  const section = sectionOf(member);
  return {
    response,
    force,
    axialStress: Math.abs(force.axial) / section.area,
    bendingStress: Math.abs(force.moment) / section.sectionModulus,
  };
}

/** The place of a part where a measure is largest over all combinations meant for members. */
export function worstPlace(
  analysis: FrameAnalysis,
  part: string,
  member: MemberItem,
  measure: (place: StressedPlace) => number,
): StressedPlace | undefined {
  let worst: StressedPlace | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const response of analysis.responses) {
    // The day of building is judged by locked-in-stress, with its own limit.
    if (response.load.use === 'service' || response.condition === 'built') continue;
    for (const force of response.forces) {
      if (force.part !== part) continue;
      const place = stressAt(member, response, force);
      const value = measure(place);
      if (value > most) {
        most = value;
        worst = place;
      }
    }
  }
  return worst;
}

/** The combination under which the frame gives way soonest, if any does. */
export function givingWay(analysis: FrameAnalysis): Response | undefined {
  const failing = analysis.responses.filter(
    (response) => response.load.use !== 'service' && response.status !== 'holds',
  );
  return failing.sort((a, b) => a.reached - b.reached)[0];
}
