import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildBook } from '@tautline/book';
import { evaluate } from '@tautline/checks';
import { dutiesOf, sourcesOf } from '@tautline/review';
import { materialsExact } from '@tautline/takeoff';
import { buyingFlags, buyingOf } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { oneShelter } from '../one-shelter.ts';
import { browserAt, printPdf } from '../pdf.ts';
import { loadSolver } from '../solver.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf } from './flags.ts';

export const book: Command = {
  name: 'book',
  usage:
    'book FILE --out DIR [--shelter NAME] [--on DATE] [--pdf] [--paper a4|letter] [--prices FILE.csv] [--frame-life YEARS] [--units metric|us]',
  does: 'Writes a build book: drawings, lists, order of work, storm card, calendar, calculation sheets.',
  options: {
    out: { type: 'string' },
    shelter: { type: 'string' },
    on: { type: 'string' },
    pdf: { type: 'boolean' },
    paper: { type: 'string' },
    units: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output) {
    const out = args.flags['out'];
    if (typeof out !== 'string') throw new CannotRun('Say where to write the book: --out DIR');
    const on = dayOf(args);
    const { shelter, loaded } = await oneShelter(
      needPaths(args, 'which file to make a book of')[0] as string,
      args.flags['shelter'],
    );
    const system = systemOf(args, loaded);
    const paper = oneOf(args, 'paper', ['a4', 'letter'] as const, system === 'us' ? 'letter' : 'a4');
    const { options, project, priceLists } = await buyingOf(loaded.world, args);
    const counted = await materialsExact(shelter, loadSolver, options);
    const evaluation = evaluate(shelter, { on });
    const spec = sourcesOf(loaded).shelter;
    const made = buildBook({
      evaluation,
      duties: spec === undefined ? [] : dutiesOf(spec, evaluation, { on, within: 0 }),
      materials: counted,
      title: loaded.title,
      ...(project.title === undefined ? {} : { project: project.title }),
      priceLists,
      on,
      system,
      paper,
    });
    await mkdir(out, { recursive: true });
    const write = (name: string, data: string | Uint8Array): Promise<void> =>
      writeFile(join(out, name), data);
    await write('book.html', made.html);
    await write('calendar.ics', made.ics);
    for (const { name, text } of made.files) await write(name, text);
    const { materialsWorkbook } = await import('@tautline/book/xlsx');
    const { sceneGlb } = await import('@tautline/book/gltf');
    await write('materials.xlsx', await materialsWorkbook(counted, system));
    await write('house.glb', await sceneGlb(shelter));
    output.out(
      `The build book of ${shelter.name} is ${join(out, 'book.html')}; drawings and lists lie beside it.\n`,
    );
    if (args.flags['pdf'] === true) output.out(await pdf(out));
    return exit.clean;
  },
};

/** The book as PDF too, where a browser is found that prints; says so where none is. */
async function pdf(out: string): Promise<string> {
  const browser = await browserAt();
  if (browser === undefined) {
    return 'No PDF: there is no Chromium on this machine to print with. Open book.html in a browser and print it.\n';
  }
  await printPdf(browser, join(out, 'book.html'), join(out, 'book.pdf'));
  return `Printed ${join(out, 'book.pdf')}.\n`;
}
