export { cautions } from './cautions.ts';
export type { Output } from './commands/command.ts';
export { run } from './run.ts';
