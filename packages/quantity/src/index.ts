export * from './days.ts';
export * from './dimension.ts';
export * from './format.ts';
export {
  isKind,
  type Kind,
  type KindName,
  kindOf,
  kinds,
  nounOf,
  type Rung,
  rungFor,
  unitsOfKind,
} from './kinds.ts';
export * from './quantity.ts';
export * from './rational.ts';
export * from './spec-text.ts';
export {
  type System,
  suggestUnits,
  type Unit,
  unitOf,
  unitSymbols,
} from './units.ts';
