export { builtInCatalogue, catalogueText, type SourceFile } from './files/catalogue.ts';
export * from './load-workspace.ts';
export type { LanguageProblem, ProblemId, Remedy, TextChange } from './problems/problem.ts';
export { patternText } from './problems/wording.ts';
export type { Position } from './text/position.ts';
