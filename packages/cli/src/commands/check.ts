import { writeFile } from 'node:fs/promises';
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
import { dayOf, needPaths, oneOf, reportsOf, shardOf, threadsOf, unitsAsked } from './flags.ts';

const formats = ['text', 'json', 'sarif', 'junit', 'github'] as const;

export const check: Command = {
  name: 'check',
  usage:
    'check PATHS... [--format text|json|sarif|junit|github] [--reports FORMAT=FILE,...] [--fail-on error|warning] [--shard I/N] [--threads N] [--units metric|us] [--on DATE] [--all] [--full] [--soil] [--person] [--timings]',
  does: 'Tells for every shelter what holds, what fails and what was not checked. With --reports junit=a.xml,sarif=b.sarif, writes these, too, from the same run. With --shard 2/5, only of the second of five equal parts of the files. With --full, also of the whole house in space. With --soil, feet give as the soil does. With --person, also for somebody at work on the frame or leaning on it. With --timings, what each stage of the analysis took.',
  options: {
    format: { type: 'string' },
    reports: { type: 'string' },
    'fail-on': { type: 'string' },
    shard: { type: 'string' },
    threads: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    all: { type: 'boolean' },
    full: { type: 'boolean' },
    soil: { type: 'boolean' },
    person: { type: 'boolean' },
    timings: { type: 'boolean' },
  },
  async run(args, output, machine) {
    const format = oneOf(args, 'format', formats, 'text');
    const reports = reportsOf(args, formats);
    const level = oneOf(args, 'fail-on', ['error', 'warning'] as const, 'error');
    const system = unitsAsked(args);
    const found = await shelterFiles(needPaths(args, 'which files or folders to check'));
    if (found.length === 0) output.err(`There is no .shelter file in ${args.paths.join(', ')}.\n`);
    const files = shardOf(args, found);
    const tasks = checkTasks(files, dayOf(args), {
      system,
      full: args.flags['full'] === true,
      soil: args.flags['soil'] === true,
      person: args.flags['person'] === true,
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
    const told: Readonly<Record<(typeof formats)[number], () => string>> = {
      text: () => textReport(summary, { all: args.flags['all'] === true }),
      json: () => `${JSON.stringify(summary, null, 2)}\n`,
      sarif: () => sarifReport(summary, version),
      junit: () => junitReport(summary, level),
      github: () => githubReport(summary),
    };
    for (const report of reports) await writeFile(report.file, told[report.format]());
    output.out(told[format]());
    if (format !== 'text')
      output.err(`Read ${summary.files} files with ${summary.shelters.length} shelters.\n`);
    return failsAt(summary, level) ? exit.findings : exit.clean;
  },
};
