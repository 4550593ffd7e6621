export { headsOf } from './actions/blown.ts';
export { type CapLoads, capLoads, capRims } from './actions/cap.ts';
export { coverWeight, deadCase } from './actions/dead.ts';
export type { CombinedLoad, LoadCase, Nature } from './actions/load-case.ts';
export { windCaseOnFrame, windOn, windShape } from './actions/wind.ts';
export {
  type AnalyseOptions,
  analyseFrame,
  type FrameAnalysis,
} from './analyse.ts';
export { innerArc, outerArc } from './film/blown-film.ts';
export {
  edgeSlope,
  type FilmPanel,
  type FilmPull,
  filmPanel,
  pocketDepth,
  pullAt,
  pullKept,
  rainSheet,
  rainTemperature,
  sagUnder,
} from './film/film-panel.ts';
export { fullTrough, type Trough, troughWith } from './film/trough.ts';
export { analysisAtGust, blowsForStrength } from './gust/at-gust.ts';
export {
  type BreakingGust,
  furthestGust,
  type GustLimit,
  type GustSweep,
  gustSweep,
  type Measure,
} from './gust/gust-sweep.ts';
export { type KnownFrames, knownFrames } from './known-frames.ts';
export { type CableState, cableUnderLoad } from './rail/cable-rail.ts';
export { eaveDemand } from './rail/eave-demand.ts';
export {
  type CableEnd,
  type PostLift,
  type PostLoad,
  type RailDemand,
  railUnder,
  ridgeDemand,
} from './rail/rail-demand.ts';
export { type FramePonding, framePonding } from './response/frame-ponding.ts';
export { kept } from './response/kept.ts';
export type {
  BuiltState,
  Reaction,
  Response,
  ResponseStatus,
  SectionForce,
} from './response/response.ts';
export { roofHeightAt } from './response/roof-height.ts';
export { build, lockedIn, respond } from './response/solve.ts';
export { type Solve, solvedFrames } from './response/solved-frames.ts';
export {
  analyseHouse,
  buildHouse,
  type HouseAnalyseOptions,
  type HouseAnswer,
  mostUnknowns,
  respondHouse,
} from './space/analyse-house.ts';
export { frameView } from './space/frame-view.ts';
export type * from './space/house.ts';
export { houseLoads, layOnHouse } from './space/house-loads.ts';
export type * from './space/house-result.ts';
export { type HouseOptions, houseDivisions, houseSystem, unknownsOf } from './space/house-system.ts';
export { loadPathCap } from './space/load-path.ts';
export { torsionOfRectangle } from './space/stiffness.ts';
export {
  Cancelled,
  type StageClock,
  type StageId,
  type Stages,
  type StageTime,
  stagesBy,
  stageTitles,
  usualBudget,
} from './stages.ts';
export { bowFrame } from './system/bow-frame.ts';
export {
  type ByCondition,
  type Condition,
  type ConditionId,
  conditionAt,
  modulusIn,
  modulusShare,
  stateIn,
  stormTemperature,
  type Temperatures,
  temperatureUnder,
} from './system/condition.ts';
export { fillingWeight } from './system/filling.ts';
export type {
  FrameElement,
  FrameSupport,
  FrameSystem,
} from './system/frame-system.ts';
export {
  depthOf,
  gravity,
  heatFactors,
  relaxedShare,
  sectionOf,
  sheetSection,
  sidewaysSection,
  weightPerLength,
} from './system/member.ts';
export { rafterFrame } from './system/rafter-frame.ts';
export {
  type RidgeStiffness,
  ridgeStiffness,
} from './system/ridge-stiffness.ts';
