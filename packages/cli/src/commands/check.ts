import { exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { githubReport } from '../report/github.ts';
import { sarifReport } from '../report/sarif.ts';
import { failsAt, summarise } from '../report/summary.ts';
import { textReport } from '../report/text.ts';
import { verdictsOf } from '../verdicts.ts';
import { version } from '../version.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf } from './flags.ts';

export const check: Command = {
  name: 'check',
  usage:
    'check PATHS... [--format text|json|sarif|github] [--fail-on error|warning] [--units metric|us] [--on DATE] [--all]',
  does: 'Tells for every shelter what holds, what fails and what was not checked.',
  options: {
    format: { type: 'string' },
    'fail-on': { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    all: { type: 'boolean' },
  },
  async run(args, output) {
    const format = oneOf(args, 'format', ['text', 'json', 'sarif', 'github'] as const, 'text');
    const level = oneOf(args, 'fail-on', ['error', 'warning'] as const, 'error');
    const system = systemOf(args);
    const day = dayOf(args);
    const files = await shelterFiles(needPaths(args, 'which files or folders to check'));
    const summary = summarise(verdictsOf(await load(files), day), system);
    if (format === 'json') output.out(`${JSON.stringify(summary, null, 2)}\n`);
    else if (format === 'sarif') output.out(sarifReport(summary, version));
    else if (format === 'github') output.out(githubReport(summary));
    else output.out(textReport(summary, { all: args.flags['all'] === true }));
    if (format !== 'text')
      output.err(`Read ${summary.files} files with ${summary.shelters.length} shelters.\n`);
    return failsAt(summary, level) ? exit.findings : exit.clean;
  },
};
