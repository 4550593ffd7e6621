export { cautions } from '@tautline/book';
export type { Output } from './commands/command.ts';
export { run } from './run.ts';
