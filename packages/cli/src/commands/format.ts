import { readFile, writeFile } from 'node:fs/promises';
import { formatText } from '@tautline/language';
import { exit } from '../exit.ts';
import { shelterFiles } from '../files.ts';
import type { Command } from './command.ts';
import { needPaths } from './flags.ts';

export const format: Command = {
  name: 'format',
  usage: 'format PATHS... [--check]',
  does: 'Lays out spec files in the one way, keeping comments; with --check only tells which are not.',
  options: { check: { type: 'boolean' } },
  async run(args, output) {
    const files = await shelterFiles(needPaths(args, 'which files or folders to format'));
    let different = 0;
    for (const file of files) {
      const text = await readFile(file, 'utf8');
      const laidOut = formatText(text);
      if (laidOut === text) continue;
      different++;
      if (args.flags['check'] !== true) await writeFile(file, laidOut);
      output.out(`${args.flags['check'] === true ? 'not laid out' : 'laid out'}: ${file}\n`);
    }
    output.out(
      `Read ${files.length} ${files.length === 1 ? 'file' : 'files'}; ${different} ${args.flags['check'] === true ? 'would change' : 'changed'}.\n`,
    );
    return args.flags['check'] === true && different > 0 ? exit.findings : exit.clean;
  },
};
