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

/** The place of a part at which a measure is largest in one response; undefined where the part has no forces there. */
export function worstPlaceIn(
  response: Response,
  part: string,
  member: MemberItem,
  measure: (place: StressedPlace) => number,
): { readonly place: StressedPlace; readonly use: number } | undefined {
  let worst: { place: StressedPlace; use: number } | undefined;
  for (const force of response.forces) {
    if (force.part !== part) continue;
    const place = stressAt(member, response, force);
    const use = measure(place);
    if (worst === undefined || use > worst.use) worst = { place, use };
  }
  return worst;
}

/** The combinations that the frame does not survive, that which brings it down soonest first. */
export function notSurvived({ responses }: Pick<FrameAnalysis, 'responses'>): readonly Response[] {
  return responses
    .filter((response) => response.load.use !== 'service' && response.status !== 'holds')
    .sort((a, b) => a.reached - b.reached);
}
