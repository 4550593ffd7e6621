import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { type Fix, messageText } from '@tautline/checks';
import { format, usedText } from '@tautline/quantity';
import { CannotRun, exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { type Mended, mend } from '../mend.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, systemOf } from './flags.ts';

export const fix: Command = {
  name: 'fix',
  usage: 'fix FILE [--write] [--full] [--units metric|us] [--on DATE]',
  does: 'Works out changes that make the errors of a file go away, one after the other; with --write, writes them into it. With --full, also those of the whole house in space, which takes a while.',
  options: {
    write: { type: 'boolean' },
    full: { type: 'boolean' },
    units: { type: 'string' },
    on: { type: 'string' },
  },
  async run(args, output) {
    const [file] = await shelterFiles([needPaths(args, 'which file to mend')[0] as string]);
    if (file === undefined) throw new CannotRun('There is no shelter file there.');
    const text = await readFile(file, 'utf8');
    const workspace = await load([file]);
    const uri = workspace.files.find((entry) => entry.asked)?.uri;
    if (uri === undefined) throw new CannotRun(`${file} cannot be read.`);
    const [first] = workspace.shelters;
    if (first === undefined) throw new CannotRun(`There is no shelter in ${file}.`);
    const wrong = workspace.problems.find((problem) => problem.severity === 'error');
    if (wrong !== undefined)
      throw new CannotRun(`${file} cannot be judged until its text is right: ${wrong.message}`);
    const system = systemOf(args, first);
    const mended = await mend(uri, text, system, dayOf(args), args.flags['full'] === true ? 'full' : 'live');
    for (const line of told(mended, system)) output.out(`${line}\n`);
    if (args.flags['write'] === true && mended.text !== text) {
      await writeFile(fileURLToPath(uri), mended.text);
      output.out(`Wrote ${mended.steps.length} changes into ${file}.\n`);
    }
    return mended.left.length > 0 ? exit.findings : exit.clean;
  },
};

/** What the change does to checks that fail already. */
function worseText({ worse }: Fix): string {
  return worse.length === 0 ? '' : `; ${worse.join(', ')} gets worse`;
}

function told(mended: Mended, system: 'metric' | 'us'): string[] {
  const lines = mended.steps.map(
    (step) =>
      `${step.finding.id}: ${messageText(step.fix.title, system)} (then ${usedText(step.fix.utilisationAfter)} used${worseText(step.fix)})`,
  );
  for (const { finding, bears } of mended.left) {
    const speed = (value: number): string => format(value, 'speed', system);
    const gust =
      bears === undefined
        ? ''
        : ` As it stands then, it bears a gust of ${speed(bears.gust)}; the site has ${speed(bears.site)}.`;
    lines.push(
      `${finding.id}: no single change that was tried makes this pass. ${messageText(finding.message, system)}${gust}`,
    );
  }
  return lines.length === 0 ? ['Nothing fails here.'] : lines;
}
