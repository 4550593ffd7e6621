import { parseArgs } from 'node:util';
import { cautionLine } from '@tautline/book';
import { commands } from './commands/all.ts';
import type { Command, Output } from './commands/command.ts';
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
    const names = commands.map((one) => one.name).join(', ');
    output.err(`There is no command '${name}'. There are ${names}; tautline help says what they do.\n`);
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
    const told =
      error instanceof CannotRun ? error.message : (argumentFault(error, command) ?? fileFault(error));
    output.err(`${told ?? `This went wrong inside tautline: ${String((error as Error).stack ?? error)}`}\n`);
    return exit.failed;
  }
}

/** What is wrong with an option, in words of ours; undefined for other errors. */
function argumentFault(error: unknown, { name, options }: Command): string | undefined {
  const code = error instanceof TypeError && 'code' in error ? String(error.code) : '';
  if (!code.startsWith('ERR_PARSE_ARGS')) return undefined;
  const { message } = error as Error;
  const option = /'(-[^' ]*)/.exec(message)?.[1] ?? '';
  const known = Object.keys(options).map((one) => `--${one}`);
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION')
    return `tautline ${name} has no option ${option}. It has ${known.join(', ')}.`;
  if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE')
    return /missing|ambiguous/.test(message)
      ? `${option} wants a value after it. tautline ${name} --help shows which.`
      : `${option} takes no value.`;
  return message;
}

const fileFaults: Readonly<Record<string, string>> = {
  ENOENT: 'the folder is not there',
  ENOTDIR: 'a part of its path is a file',
  EEXIST: 'a file of that name is in the way',
  EISDIR: 'it is a folder',
  EACCES: 'the system does not let you',
  EPERM: 'the system does not let you',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
};

/** Why a file cannot be read or written, for what the system refuses; undefined for other errors. */
function fileFault(error: unknown): string | undefined {
  if (!(error instanceof Error && 'code' in error && 'path' in error)) return undefined;
  const why = fileFaults[String(error.code)];
  return why === undefined ? undefined : `'${String(error.path)}' cannot be used: ${why}.`;
}

function help(): string {
  const lines = commands.map((command) => `  tautline ${command.usage}\n      ${command.does}`);
  return `tautline checks, counts and draws crop rain shelters from their specs.\n\n${lines.join('\n')}\n\n${cautionLine}\n`;
}
