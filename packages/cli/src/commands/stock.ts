import { writeFile } from 'node:fs/promises';
import { materialsCsv } from '@tautline/takeoff';
import { buyingFlags, frameLifeOf, pricesAsked } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { documentMarkdown, documentPage, documentText } from '../report/document.ts';
import { pooled } from '../stock/pooled.ts';
import { stockDocument, stockJson } from '../stock/report.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf } from './flags.ts';

export const stock: Command = {
  name: 'stock',
  usage:
    'stock PATHS... [--shelter NAME,NAME] [--built] [--format text|markdown|html|csv|json] [--out FILE] [--prices FILE.csv] [--frame-life YEARS] [--units metric|us] [--on DATE]',
  does: 'Counts all shelters of the files as one purchase against the stock on hand that they say: what is taken from it, what is left, what to buy, how to cut it and what it costs. Shelters that stand already (`built`) are left out unless --built is given.',
  options: {
    shelter: { type: 'string' },
    built: { type: 'boolean' },
    format: { type: 'string' },
    out: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output) {
    const form = oneOf(args, 'format', ['text', 'markdown', 'html', 'csv', 'json'] as const, 'text');
    const day = dayOf(args);
    const only = args.flags['shelter'];
    const out = args.flags['out'];
    const workspace = await load(
      await shelterFiles(needPaths(args, 'which files or folders to count together')),
    );
    const [first] = workspace.shelters;
    if (first === undefined) throw new CannotRun('There is no shelter in these files.');
    const system = systemOf(args, first);
    const prices = await pricesAsked(args);
    const frameLife = frameLifeOf(args);
    const all = await pooled(workspace, {
      ...(typeof only === 'string' ? { only: only.split(',').map((name) => name.trim()) } : {}),
      ...(args.flags['built'] === true ? {} : { standingOn: day }),
      ...(prices === undefined ? {} : { prices }),
      ...(frameLife === undefined ? {} : { frameLife }),
    });
    const text =
      form === 'json'
        ? stockJson(all)
        : form === 'csv'
          ? materialsCsv(all.materials, system)
          : { text: documentText, markdown: documentMarkdown, html: documentPage }[form](
              stockDocument(all, system, form !== 'text'),
            );
    if (typeof out === 'string') {
      await writeFile(out, text);
      output.out(`Wrote what ${all.counted.length} shelters take together into ${out}.\n`);
    } else output.out(text);
    return exit.clean;
  },
};
