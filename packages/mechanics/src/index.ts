export {
  type Arc,
  arcOf,
  type BentLine,
  type BentPoint,
  bentLine,
  type LeggedArc,
  leggedArc,
  type Stretch,
} from './arc.ts';
export type { Bow, BowGiven, BowPoint } from './bow.ts';
export { clampedBow, heldBow } from './clamped-bow.ts';
export { pinnedBow } from './elastica.ts';
export { positive, type Refusal, refuse } from './outcome.ts';
export * from './plane-frame.ts';
export { rectangle, roundHollow, roundSolid, type Section } from './section.ts';
