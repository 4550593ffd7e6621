import { CannotRun, exit } from '../exit.ts';
import { shelterFiles } from '../files.ts';
import { checkTasks, together } from '../report/check-files.ts';
import { githubReport } from '../report/github.ts';
import { junitReport } from '../report/junit.ts';
import { sarifReport } from '../report/sarif.ts';
import { failsAt } from '../report/summary.ts';
import { textReport } from '../report/text.ts';
import { runTasks } from '../threads/pool.ts';
import { version } from '../version.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, shardOf, threadsOf, unitsAsked } from './flags.ts';

export const check: Command = {
  name: 'check',
  usage:
    'check PATHS... [--format text|json|sarif|junit|github] [--fail-on error|warning] [--shard I/N] [--threads N] [--units metric|us] [--on DATE] [--all] [--full] [--timings]',
  does: 'Tells for every shelter what holds, what fails and what was not checked. With --shard 2/5, only of the second of five equal parts of the files. With --full, also of the whole house in space. With --timings, what each stage of the analysis took.',
  options: {
    format: { type: 'string' },
    'fail-on': { type: 'string' },
    shard: { type: 'string' },
    threads: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    all: { type: 'boolean' },
    full: { type: 'boolean' },
    timings: { type: 'boolean' },
  },
  async run(args, output, machine) {
    const format = oneOf(args, 'format', ['text', 'json', 'sarif', 'junit', 'github'] as const, 'text');
    const level = oneOf(args, 'fail-on', ['error', 'warning'] as const, 'error');
    const system = unitsAsked(args);
    const found = await shelterFiles(needPaths(args, 'which files or folders to check'));
    const files = shardOf(args, found);
    const tasks = checkTasks(files, dayOf(args), {
      system,
      full: args.flags['full'] === true,
      timings: args.flags['timings'] === true,
    });
    const stopped = tasks.length > 1 ? machine.untilStopped() : undefined;
    const results = await runTasks(tasks, {
      machine: { ...machine, threads: threadsOf(args, machine) },
      ...(stopped ? { stopped } : {}),
      onDone: (done) => machine.progress(`Checked ${done} of ${tasks.length} lots of files`),
    });
    machine.progress('');
    if (stopped?.aborted) throw new CannotRun('Stopped before everything was checked.');
    const summary = together(results.flatMap((result) => result ?? []));
    if (format === 'json') output.out(`${JSON.stringify(summary, null, 2)}\n`);
    else if (format === 'sarif') output.out(sarifReport(summary, version));
    else if (format === 'junit') output.out(junitReport(summary, level));
    else if (format === 'github') output.out(githubReport(summary));
    else output.out(textReport(summary, { all: args.flags['all'] === true }));
    if (format !== 'text')
      output.err(`Read ${summary.files} files with ${summary.shelters.length} shelters.\n`);
    return failsAt(summary, level) ? exit.findings : exit.clean;
  },
};
