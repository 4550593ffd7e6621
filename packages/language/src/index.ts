export { applySpecEdits, changed, type EditResult, editsByFile } from './edit/apply-spec-edits.ts';
export { quantityText, valueText } from './edit/value-text.ts';
export { builtInCatalogue, catalogueText, type SourceFile } from './files/catalogue.ts';
export { shelterTemplates, type TemplateNames, templateFor, textOfTemplate } from './files/templates.ts';
export { formatText } from './format/format.ts';
export * from './load-workspace.ts';
export type { LanguageProblem, ProblemId, Remedy, TextChange } from './problems/problem.ts';
export { patternText } from './problems/wording.ts';
export type { Position } from './text/position.ts';
