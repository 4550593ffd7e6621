/** One command of the command line. Adding one: a file here, a line in `commands/all.ts`. */
import type { ParseArgsConfig } from 'node:util';
import type { Machine } from '../machine.ts';

export interface Output {
  out(text: string): void;
  err(text: string): void;
}

export interface CommandArguments {
  readonly paths: readonly string[];
  readonly flags: Readonly<Record<string, string | boolean | undefined>>;
}

export interface Command {
  readonly name: string;
  /** The call, after `tautline `. */
  readonly usage: string;
  readonly does: string;
  readonly options: NonNullable<ParseArgsConfig['options']>;
  /** Returns the exit code. Throws CannotRun for what makes it impossible. */
  run(args: CommandArguments, output: Output, machine: Machine): Promise<number>;
}
