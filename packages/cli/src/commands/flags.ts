import type { System } from '@tautline/quantity';
import { CannotRun } from '../exit.ts';
import type { CommandArguments } from './command.ts';

/** A flag that takes one of several words. */
export function oneOf<T extends string>(
  args: CommandArguments,
  flag: string,
  words: readonly T[],
  usual: T,
): T {
  const value = args.flags[flag];
  if (value === undefined) return usual;
  const word = words.find((candidate) => candidate === value);
  if (word === undefined)
    throw new CannotRun(`--${flag} takes ${words.join(', ')}; it got '${String(value)}'.`);
  return word;
}

export function systemOf(args: CommandArguments): System {
  return oneOf(args, 'units', ['metric', 'us'] as const, 'metric');
}

/** The day ages are counted to: `--on`, or today. */
export function dayOf(args: CommandArguments): string {
  const value = args.flags['on'];
  if (value === undefined) return new Date().toISOString().slice(0, 10);
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value) || Number.isNaN(Date.parse(value))) {
    throw new CannotRun(`--on takes a date like 2027-03-01; it got '${String(value)}'.`);
  }
  return value;
}

export function needPaths(args: CommandArguments, what: string): readonly string[] {
  if (args.paths.length === 0) throw new CannotRun(`Say ${what}.`);
  return args.paths;
}
