export * from './model/items.ts';
export { type Origin, originOf } from './model/origin.ts';
export * from './model/shelter.ts';
export * from './model/site.ts';
export type * from './spec/spec.ts';
export type * from './vocabulary/entry.ts';
export { compileSentence, piecesOf } from './vocabulary/sentence.ts';
export { definitionKind, definitionKinds, entryFor, factOf, itemKinds } from './vocabulary/vocabulary.ts';
