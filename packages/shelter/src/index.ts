export { leaning } from './geometry/bay-bracing.ts';
export { type BowAsked, type BowFormed, type BowResult, bowShape } from './geometry/bow-shape.ts';
export { clearHeightAt, leastClearOver, tieUndersideAt } from './geometry/headroom.ts';
export { innerFilm } from './geometry/inner-film.ts';
export { jointLap, jointReach, sideBySide } from './geometry/joint-reach.ts';
export {
  crossingsAt,
  crownOf,
  heightAt,
  lengthOf,
  lineOf,
  pointOn,
  type Stretch,
  sharpestOf,
} from './geometry/line.ts';
export { gableLine, singleSlopeLine } from './geometry/rafter-line.ts';
export { circularLine, coldBentLine, pointedLine } from './geometry/round-bows.ts';
export { stationsAlong } from './geometry/stations.ts';
export { stayLength, staySlope } from './geometry/stay.ts';
export * from './model/items.ts';
export { type Origin, originOf } from './model/origin.ts';
export { postRows, railsUnder } from './model/rails-under.ts';
export type * from './model/range.ts';
export * from './model/shelter.ts';
export * from './model/site.ts';
export { reasonToCome } from './resolve/claims.ts';
export { resolveItem, resolveItems, resolveMaterial } from './resolve/items.ts';
export { type Notes, newNotes } from './resolve/notes.ts';
export {
  type OnHand,
  type PriceListNote,
  type Project,
  readPriceLists,
  readProject,
  readYard,
  unitsOf,
} from './resolve/project.ts';
export { resolveRange } from './resolve/range.ts';
export { type Resolved, resolveShelter, resolveSite, shelterNames } from './resolve/shelter.ts';
export { applyEdits, type Definitions, unmatchedEdits } from './spec/edits.ts';
export * from './spec/nodes.ts';
export type * from './spec/spec.ts';
export { type Swap, standIns, swapEdits } from './spec/swap.ts';
export { varied } from './spec/variant.ts';
export type * from './vocabulary/entry.ts';
export { compileSentence, piecesOf } from './vocabulary/sentence.ts';
export { definitionKind, definitionKinds, entryFor, factOf, itemKinds } from './vocabulary/vocabulary.ts';
