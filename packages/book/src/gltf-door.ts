/** Kept out of the front door, so that only who writes a model in space carries the library for it. */
export { sceneGlb } from './exports/glb.ts';
