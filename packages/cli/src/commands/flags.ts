import { isDay, type System } from '@tautline/quantity';
import { type SpecWorld, unitsOf } from '@tautline/shelter';
import { CannotRun } from '../exit.ts';
import type { Machine } from '../machine.ts';
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

/** Units asked for with `--units`; undefined leaves each shelter in its own. */
export function unitsAsked(args: CommandArguments): System | undefined {
  return args.flags['units'] === undefined
    ? undefined
    : oneOf(args, 'units', ['metric', 'us'] as const, 'metric');
}

/** Units to show a shelter in: those asked for, else its own. */
export function systemOf(args: CommandArguments, { world }: { readonly world: SpecWorld }): System {
  return unitsAsked(args) ?? unitsOf(world);
}

/** The day ages are counted to: `--on`, or today. */
export function dayOf(args: CommandArguments): string {
  const value = args.flags['on'];
  if (value === undefined) return new Date().toISOString().slice(0, 10);
  if (typeof value !== 'string' || !isDay(value)) {
    throw new CannotRun(`--on takes a date like 2027-03-01; it got '${String(value)}'.`);
  }
  return value;
}

export function needPaths(args: CommandArguments, what: string): readonly string[] {
  if (args.paths.length === 0) throw new CannotRun(`Say ${what}.`);
  return args.paths;
}

/** The I-th of N parts of a sorted list, as `--shard I/N` asks: every N-th, so that parts are equally long. */
export function shardOf<T>(args: CommandArguments, all: readonly T[]): readonly T[] {
  const value = args.flags['shard'];
  if (value === undefined) return all;
  const match = /^(\d{1,6})\/(\d{1,6})$/.exec(String(value));
  const [part, parts] = [Number(match?.[1]), Number(match?.[2])];
  if (!match || part < 1 || part > parts)
    throw new CannotRun(`--shard takes a part and how many there are, like 2/5; it got '${String(value)}'.`);
  return all.filter((_, index) => index % parts === part - 1);
}

/** How many threads to use: `--threads`, or one for each processor. */
export function threadsOf(args: CommandArguments, machine: Machine): number {
  const value = args.flags['threads'];
  if (value === undefined) return machine.threads;
  const count = Number(value);
  if (!Number.isInteger(count) || count < 1 || count > 256)
    throw new CannotRun(`--threads takes a count from 1 on; it got '${String(value)}'.`);
  return count;
}

/** What `--reports junit=FILE,sarif=FILE` asks for besides what is printed. */
export function reportsOf<T extends string>(
  args: CommandArguments,
  formats: readonly T[],
): readonly { readonly format: T; readonly file: string }[] {
  const value = args.flags['reports'];
  if (typeof value !== 'string') return [];
  return value.split(',').map((one) => {
    const at = one.indexOf('=');
    const format = formats.find((name) => name === one.slice(0, at));
    const file = one.slice(at + 1);
    if (format === undefined || file === '')
      throw new CannotRun(
        `--reports takes formats and files, like ${formats[0]}=FILE,${formats[1]}=FILE (${formats.join(', ')}); it got '${one}'.`,
      );
    return { format, file };
  });
}
