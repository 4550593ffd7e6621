/**
 * What a bow that is sprung into its shape has in it, and the posts it pushes: its own springing, and the loads on it.
 *
 * The springing is held by the shape. It is full on the day of building, falls as the pipe creeps, and falls further
 * while the sun heats it: a pipe that is held bent does not tear by softening. Weight, crop and water do not fall. So
 * what stays is asked twice: at 23 °C for the loads and the springing together, and at the hottest noon for the loads
 * by themselves, against what the hot pipe may have.
 */
import type { Duration } from '@tautline/loads';
import type { MemberItem, Site } from '@tautline/shelter';
import {
  type FrameAnalysis,
  heatFactors,
  lockedIn,
  type Response,
  type SectionForce,
  stateIn,
  stormTemperature,
  temperatureUnder,
} from '@tautline/structure';
import { limitsUnder, type MemberLimit, memberLimit } from './resistance.ts';

/** A response as it is asked at one temperature. Both lists run alongside the forces of the response. */
export interface Look {
  readonly limit: MemberLimit;
  /** Temperature it is asked at, °C; that which the duration of the load has where absent. */
  readonly temperature?: number;
  /** By the loads. */
  readonly loads: readonly SectionForce[];
  /** By the springing at that temperature; none in a frame that is not sprung. */
  readonly springing?: readonly (SectionForce | undefined)[];
  /** The springing is left out of the bending: it has relaxed in the heat. */
  readonly relaxed?: true;
}

/** Forces that bend a member in a look: those of its loads, and of its springing where that counts. */
export function bendingForces({
  loads,
  springing,
  relaxed,
}: Pick<Look, 'loads' | 'springing' | 'relaxed'>): readonly SectionForce[] {
  return springing === undefined || relaxed === true
    ? loads
    : loads.map((force, k) => sum(force, springing[k]));
}

/** How a response on a member of the typical frame is asked; `sprung` where its bows are sprung into their shape. */
export function looksAt(
  site: Site,
  member: MemberItem,
  states: FrameAnalysis['states'],
  { wet = false, sprung }: { readonly wet?: boolean; readonly sprung: boolean },
): (response: Response) => readonly Look[] {
  const limitUnder = limitsUnder(site, member, wet);
  if (!sprung) return (response) => [{ limit: limitUnder(response.load), loads: response.forces }];
  const mild = new Map<Duration, MemberLimit>();
  const mildLimit = (duration: Duration): MemberLimit => {
    const limit = mild.get(duration) ?? memberLimit(site, member, duration, wet, stormTemperature);
    mild.set(duration, limit);
    return limit;
  };
  return ({ load, condition, forces }) => {
    const springing = alongside(forces, lockedIn(stateIn(states, condition)));
    const loads = forces.map((force, k) => less(force, springing[k]));
    const limit = limitUnder(load);
    if (condition === 'built' || !softens(member, temperatureUnder(site, load.duration)))
      return [{ limit, loads, springing }];
    return [
      {
        limit: mildLimit(load.duration),
        temperature: stormTemperature,
        loads,
        springing: alongside(forces, lockedIn(stateIn(states, 'gust'))),
      },
      { limit, loads, springing, relaxed: true },
    ];
  };
}

/** For each force that of the other list at the same place: a house in space divides its posts in its own way. */
function alongside(
  forces: readonly SectionForce[],
  others: readonly SectionForce[],
): readonly (SectionForce | undefined)[] {
  return forces.map((force, k) => {
    const same = others[k];
    if (same !== undefined && same.element === force.element && same.at === force.at) return same;
    const near = others.filter(({ part, element }) => part === force.part && element === force.element);
    return near.reduce<SectionForce | undefined>(
      (best, one) =>
        best === undefined || Math.abs(one.at - force.at) < Math.abs(best.at - force.at) ? one : best,
      undefined,
    );
  });
}

function softens(member: MemberItem, temperature: number): boolean {
  const [hot, usual] = [heatFactors(member, temperature), heatFactors(member, stormTemperature)];
  return hot.strength < usual.strength || hot.modulus < usual.modulus;
}

const sum = (force: SectionForce, other: SectionForce | undefined): SectionForce =>
  other === undefined
    ? force
    : {
        ...force,
        axial: force.axial + other.axial,
        moment: force.moment + other.moment,
        shear: force.shear + other.shear,
      };

const less = (force: SectionForce, other: SectionForce | undefined): SectionForce =>
  other === undefined
    ? force
    : {
        ...force,
        axial: force.axial - other.axial,
        moment: force.moment - other.moment,
        shear: force.shear - other.shear,
      };
