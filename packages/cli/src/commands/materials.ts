import { writeFile } from 'node:fs/promises';
import { type Materials, materialsCsv, materialsExactOf, materialsJson, takenBy } from '@tautline/takeoff';
import { buyingFlags, buyingOf } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { shelterOrRange } from '../one-shelter.ts';
import { materialsText } from '../report/materials-text.ts';
import { loadSolver } from '../solver.ts';
import type { Command } from './command.ts';
import { needPaths, oneOf, systemOf } from './flags.ts';

export const materials: Command = {
  name: 'materials',
  usage:
    'materials FILE [--shelter NAME] [--format text|json|csv|xlsx] [--out FILE] [--prices FILE.csv] [--frame-life YEARS] [--units metric|us]',
  does: 'Counts every piece of a shelter or a range from the geometry, says what to buy, how to cut it and what it costs.',
  options: {
    format: { type: 'string' },
    out: { type: 'string' },
    shelter: { type: 'string' },
    units: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output) {
    const form = oneOf(args, 'format', ['text', 'json', 'csv', 'xlsx'] as const, 'text');
    const out = args.flags['out'];
    const file = needPaths(args, 'which file to count')[0] as string;
    const { name, loaded, takeoff, ground } = await counting(file, args.flags['shelter']);
    const system = systemOf(args, loaded);
    if (form === 'xlsx' && typeof out !== 'string')
      throw new CannotRun('Say where to write the workbook: --out FILE.xlsx');
    const buying = await buyingOf(loaded.world, args);
    const counted: Materials = await materialsExactOf(takeoff, ground, loadSolver, buying.options);
    const made =
      form === 'json'
        ? materialsJson(counted)
        : form === 'csv'
          ? materialsCsv(counted, system)
          : form === 'xlsx'
            ? await workbook(counted, system)
            : materialsText(name, counted, system, buying.priceLists);
    if (typeof out === 'string') {
      await writeFile(out, made);
      output.out(`Wrote the materials of ${name} into ${out}.\n`);
    } else output.out(made as string);
    return exit.clean;
  },
};

/** What is to be counted: a shelter, or all of a range. */
async function counting(file: string, named: string | boolean | undefined) {
  const found = await shelterOrRange(file, named);
  const what = 'range' in found ? found.range : found.shelter;
  return { name: what.name, loaded: found.loaded, ...takenBy(what) };
}

/** Loaded only when a workbook is asked for. */
async function workbook(counted: Materials, system: 'metric' | 'us'): Promise<Uint8Array> {
  const { materialsWorkbook } = await import('@tautline/book/xlsx');
  return materialsWorkbook(counted, system);
}
