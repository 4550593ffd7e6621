export {
  type BarChart,
  barChart,
  type ChartRow,
  type CutBar,
  type CutList,
  type CutPiece,
  cutBars,
} from './charts/bars.ts';
export {
  type ScatterAxis,
  type ScatterChart,
  type ScatterPoint,
  scatterChart,
} from './charts/scatter.ts';
export { type Described, describeParts } from './describe.ts';
export { toDxf } from './output/dxf.ts';
export { toSvg } from './output/svg.ts';
export { type ThemeName, themeVariables } from './output/themes.ts';
export { type LoadChoice, loadChoices, responseId } from './overlays/load-words.ts';
export {
  type OverlayName,
  overlaysOf,
  type PartUse,
  responseOf,
  viewOfOverlay,
} from './overlays/of-analysis.ts';
export { highlightPart } from './scene/halo.ts';
export type * from './scene/shapes.ts';
export { type Scene3d, type Segment, type Space, type Surface, scene3d } from './scene3d.ts';
export { type BendRun, bendRuns } from './views/bend-runs.ts';
export { bendTemplateView } from './views/bend-template.ts';
export { coverView } from './views/cover.ts';
export { endView, saysEnds } from './views/end.ts';
export type { SectionOverlays, Utilisation } from './views/overlays.ts';
export { type Peg, pegsOf } from './views/pegs.ts';
export { planView } from './views/plan.ts';
export { rangeParts, rangePlanView } from './views/range-plan.ts';
export { sectionView } from './views/section.ts';
export { settingOutView } from './views/setting-out.ts';
export { sideView } from './views/side.ts';
export { type ViewName, views } from './views/views.ts';
