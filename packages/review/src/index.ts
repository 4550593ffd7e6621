export { anythingDiffers, type Changes, changesOf, designDiffers } from './changes.ts';
export { blockChanges, type FactChange, sameFacts } from './facts.ts';
export {
  type CostSide,
  type Governing,
  governingOf,
  type MaterialChange,
} from './figures.ts';
export { type AcceptanceChange, type FindingChange, type FindingSide, findingChanges } from './findings.ts';
export { firstFailureOf } from './first-failure.ts';
export { type Duty, type DutyOptions, dutiesOf } from './keeping/duties.ts';
export { columns } from './output/columns.ts';
export {
  type Explored,
  exploredJson,
  exploredMarkdown,
  exploredText,
  type ToldChoice,
  tellChoice,
} from './output/explored.ts';
export { exploredPage } from './output/explored-page.ts';
export { reviewJson } from './output/json.ts';
export { commentMark, type MarkdownOptions, reviewMarkdown } from './output/markdown.ts';
export { markdownRow, markdownText } from './output/markdown-text.ts';
export { type PageOptions, reviewPage } from './output/page.ts';
export { findingLine } from './output/told.ts';
export { type Charted, type PlainVariant, plainVariant, variantsChart } from './output/variants-chart.ts';
export { likeness, type Pair, pairShelters } from './pairs.ts';
export type { PartChange } from './parts.ts';
export { type Review, reviewOf, type ShelterReview, type Sides } from './review.ts';
export type { FirstFailure, Judged, RenamedFiles, Reviewed, Revision, Written } from './revision.ts';
export { type Said, saidText, saidTexts } from './said.ts';
export { type Axes, type Axis, axesOf } from './vary/axes.ts';
export { type Choice, type Choices, choicesOf, valueText } from './vary/choices.ts';
export { headroomPlace, heldFixed, type VariantFigures, variantFigures } from './vary/figures.ts';
export { type Aim, front } from './vary/front.ts';
export { editsAt, gridSize, mostVariants, valuesAt } from './vary/grid.ts';
export { type Figures, withFigures, workedOut, worthWorkingOut } from './worked-out.ts';
export { sourcesOf } from './written.ts';
