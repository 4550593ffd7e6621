import { parseArgs } from 'node:util';
import { cautionLine } from '@tautline/book';
import { commands } from './commands/all.ts';
import type { Output } from './commands/command.ts';
import { CannotRun, exit } from './exit.ts';
import { type Machine, quietMachine } from './machine.ts';
import { version } from './version.ts';

/** Runs the command line; never throws, answers with the exit code. */
export async function run(
  words: readonly string[],
  output: Output,
  machine: Machine = quietMachine,
): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    output.out(help());
    return name === undefined ? exit.failed : exit.clean;
  }
  if (name === '--version') {
    output.out(`${version}\n`);
    return exit.clean;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    output.err(`There is no command '${name}'.\n\n${help()}`);
    return exit.failed;
  }
  try {
    const { values, positionals } = parseArgs({
      args: [...rest],
      options: { ...command.options, help: { type: 'boolean', short: 'h' } },
      allowPositionals: true,
    });
    const flags = values as Record<string, string | boolean | undefined>;
    if (flags['help'] === true) {
      output.out(`tautline ${command.usage}\n${command.does}\n`);
      return exit.clean;
    }
    return await command.run({ paths: positionals, flags }, output, machine);
  } catch (error) {
    const told = error instanceof CannotRun || isArgumentError(error);
    output.err(
      `${told ? (error as Error).message : `This went wrong inside tautline: ${String((error as Error).stack ?? error)}`}\n`,
    );
    return exit.failed;
  }
}

function isArgumentError(error: unknown): boolean {
  return error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}

function help(): string {
  const lines = commands.map((command) => `  tautline ${command.usage}\n      ${command.does}`);
  return `tautline checks, counts and draws crop rain shelters from their specs.\n\n${lines.join('\n')}\n\n${cautionLine}\n`;
}
