/** The house in space as a file: in the worker, for the library that writes it is no small one. */
import { sceneGlb } from '@tautline/book/gltf';
import type { Job } from '@tautline/language/server';
import { resolveShelter } from '@tautline/shelter';

/** Name of the job in the worker. */
export const glbJob = 'glb';

export interface GlbInput {
  readonly shelter: string;
}

/** Gives the bytes of a .glb file as `Uint8Array`; undefined for what cannot be resolved. */
export const glb: Job = ([world], input): Promise<Uint8Array> | undefined => {
  const { shelter } = world ? resolveShelter((input as GlbInput).shelter, world) : {};
  return shelter && sceneGlb(shelter);
};
