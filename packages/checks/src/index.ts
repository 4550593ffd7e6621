export { type AtGust, atGust, type GustUse } from './at-gust.ts';
export type {
  Check,
  CheckInput,
  Lever,
  Stock,
  SymbolMeaning,
} from './check.ts';
export { woodInGround } from './checks/rot.ts';
export {
  type EvaluateOptions,
  type Evaluation,
  evaluate,
  type Uncovered,
} from './evaluate.ts';
export { evaluateRange, type RangeVerdict } from './evaluate-range.ts';
export { type ExampleSpecs, exampleSpecs } from './example-specs.ts';
export { explanationPage, inUnits } from './explanation-page.ts';
export type * from './finding.ts';
export { rangeFixesFor } from './fixes/range.ts';
export { type FixContext, fixesFor } from './fixes/search.ts';
export { gustOrder } from './gust.ts';
export { type FirstFailure, filmOffMargin, type GustOrder, type Unranked } from './gust-order.ts';
export { windLoaded } from './gust-rest.ts';
export { hardestOf, type Used } from './hardest.ts';
export { nearLimit } from './judge.ts';
export { checkReference } from './reference.ts';
export { checkOf, checks, gustChecks, wholeHouseChecks } from './registry.ts';
export { sources } from './sources.ts';
export { type StormOff, stormOff } from './storm-off.ts';
export { measuredText, messageText } from './text.ts';
export { verdictText } from './verdict-text.ts';
