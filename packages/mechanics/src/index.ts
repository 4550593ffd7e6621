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
export {
  type BeamAnswer,
  type BeamEnd,
  type BeamLoad,
  cantilever,
  continuousBeam,
  equalSpans,
} from './beam.ts';
export type { Bow, BowGiven, BowPoint } from './bow.ts';
export * from './cable.ts';
export { clampedBow, heldBow } from './clamped-bow.ts';
export * from './column.ts';
export { pinnedBow } from './elastica.ts';
export * from './membrane.ts';
export { positive, type Refusal, refuse } from './outcome.ts';
export * from './plane-frame.ts';
export * from './ponding.ts';
export { corrugated, rectangle, roundHollow, roundSolid, type Section } from './section.ts';
export * from './space-frame.ts';
