/**
 * Two films blown apart by a fan, as arcs between the rails that hold their edges. Forces per metre of house.
 *
 * Under an even pressure p a film stands as an arc of radius R with the pull T = p R all along (membrane,
 * general mechanics). The fan presses on both films alike, up on the outer and down on the inner one, so what
 * is left on the rails is the pull inwards. Wind and snow act on the outer film alone: the air between the films
 * keeps its pressure.
 */
import type { Inflated } from '@tautline/shelter';

export interface FilmArc {
  /** m */
  readonly radius: number;
  /** Slope where the film leaves the rail, rad. */
  readonly slope: number;
  /** Along the film from rail to rail, m. */
  readonly length: number;
}

/** Force on the rail, N per metre of it: along +x, and up. */
export interface EdgeForce {
  readonly x: number;
  readonly y: number;
}

export interface EdgeForces {
  readonly left: EdgeForce;
  readonly right: EdgeForce;
}

/** Anything that stands as an arc between two level edges, m. */
export interface Arched {
  readonly span: number;
  readonly rise: number;
}

function arcOf(span: number, rise: number): FilmArc {
  const radius = (span * span) / (8 * rise) + rise / 2;
  const slope = 2 * Math.atan2(2 * rise, span);
  return { radius, slope, length: 2 * slope * radius };
}

export const outerArc = (roof: Inflated): FilmArc => arcOf(roof.span, roof.rise);
export const innerArc = (roof: Inflated): FilmArc => arcOf(roof.span, roof.hang);

/** What the fan's pressure alone pulls the rails inwards with, N/m: p (R_o cos α_o + R_i cos α_i). */
export function pullOfFan(roof: Inflated): number {
  const along = ({ radius, slope }: FilmArc): number => radius * Math.cos(slope);
  return roof.pressure * (along(outerArc(roof)) + along(innerArc(roof)));
}

/** A pressure on a stretch of the outer film, Pa, positive inwards; places are shares of its length from the left. */
export type PressureAt = (from: number, to: number) => number;

/** Stretches over which a pressure on the film is summed. */
const stretches = 40;

/**
 * What a pressure on the outer film, or on a stiff sheet bent to an arc, adds at its two rails. Lift and push follow from balance alone; the pull
 * inwards is that of an arc under the mean of the pressure, T = p R, which is exact where it is even.
 */
export function onOuterFilm(roof: Arched, pressure: PressureAt): EdgeForces {
  const { radius, slope, length } = arcOf(roof.span, roof.rise);
  const piece = length / stretches;
  let push = 0;
  let lift = 0;
  let turning = 0;
  let mean = 0;
  for (let k = 0; k < stretches; k++) {
    const out = -pressure(k / stretches, (k + 1) / stretches);
    const angle = slope * (1 - (2 * k + 1) / stretches);
    // A piece of arc over its own chord, so that an even pressure lifts with exactly p times the span.
    const chord = (2 * Math.sin(piece / (2 * radius)) * radius) / piece;
    const fx = -out * Math.sin(angle) * piece * chord;
    const fy = out * Math.cos(angle) * piece * chord;
    const x = roof.span / 2 - radius * Math.sin(angle);
    const y = radius * (Math.cos(angle) - Math.cos(slope));
    push += fx;
    lift += fy;
    turning += x * fy - y * fx;
    mean += out / stretches;
  }
  const inwards = mean * radius * Math.cos(slope);
  const right = turning / roof.span;
  return {
    left: { x: inwards + push / 2, y: lift - right },
    right: { x: -inwards + push / 2, y: right },
  };
}

/**
 * The same for a load on plan, Pa, positive down (snow), by the parabola of a cable under an even load:
 * H = s̄ S² / 8 f. It relieves the pull inwards as long as the fan's pressure is larger.
 */
export function loadOnPlan(roof: Inflated, load: (share: number) => number): EdgeForces {
  let down = 0;
  let atRight = 0;
  for (let k = 0; k < stretches; k++) {
    const share = (k + 0.5) / stretches;
    const part = (load(share) * roof.span) / stretches;
    down += part;
    atRight += part * share;
  }
  const out = (down * roof.span) / (8 * roof.rise);
  return { left: { x: -out, y: -(down - atRight) }, right: { x: out, y: -atRight } };
}
