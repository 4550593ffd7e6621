export type * from './finding.ts';
