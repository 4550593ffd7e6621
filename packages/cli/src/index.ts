export type { Command, CommandArguments, Output } from './commands/command.ts';
export { load } from './files.ts';
export { type Machine, quietMachine } from './machine.ts';
export { type Mended, type MendStep, mend } from './mend.ts';
export { run } from './run.ts';
export {
  type PlacedFinding,
  type PlacedProblem,
  type Verdict,
  type Verdicts,
  verdictsOf,
} from './verdicts.ts';
