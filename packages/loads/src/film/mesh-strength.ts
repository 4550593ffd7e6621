/** Pull that mesh, net and shade cloth may have, and how they stretch. */

import type { Duration } from '../resistance/duration.ts';
import type { Step } from '../step.ts';
import { pullWhenHot } from './film-strength.ts';

/** Stretch at which polyethylene mesh breaks: from memory; makers give 15 to 30 %, and the stiffer pulls harder. */
export const MESH_STRETCH = 0.2;

/** Stretch stiffness of mesh, N/m: its breaking pull over its stretch at breaking. */
export const meshStiffness = (strength: number): number => strength / MESH_STRETCH;

export interface MeshPull {
  /** N/m. */
  readonly allowable: number;
  readonly step: Step;
}

/**
 * Pull that mesh may have, N/m, of a breaking pull `strength` (N/m) at a temperature in °C: half of it in a gust, a
 * quarter where it stays (common practice, no source); heat as for polyethylene film, at most 1.
 */
export function meshPull(strength: number, temperature: number, duration: Duration): MeshPull {
  return pullWhenHot(strength, temperature, duration === 'gust' ? 0.5 : 0.25, {
    symbol: 'T_a',
    meaning: 'pull the mesh may have',
    rated: 'breaking pull',
    shared: 'share for the duration of the pull',
    source: 'practice:mesh',
  });
}
