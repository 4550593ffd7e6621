import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Drawing, planView, rangePlanView, sectionView, sideView, toSvg } from '@tautline/drawing';
import type { LoadedShelter } from '@tautline/language';
import type { System } from '@tautline/quantity';
import { type Materials, materialsExactOf, moneyText, type Taken, takenBy } from '@tautline/takeoff';
import { buyingFlags, buyingOf } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { materialsText } from '../report/materials-text.ts';
import { type Sheet, sheetPage } from '../report/sheet-page.ts';
import { summarise } from '../report/summary.ts';
import { textReport } from '../report/text.ts';
import { loadSolver } from '../solver.ts';
import { type Verdicts, verdictsOf } from '../verdicts.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, systemOf, unitsAsked } from './flags.ts';

const views = { section: sectionView, plan: planView, side: sideView } as const;

export const sheets: Command = {
  name: 'sheets',
  usage: 'sheets PATHS... --out DIR [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'Writes drawings, findings and materials of every shelter and range, and one page that shows them all.',
  options: { out: { type: 'string' }, units: { type: 'string' }, on: { type: 'string' }, ...buyingFlags },
  async run(args, output) {
    const out = typeof args.flags['out'] === 'string' ? args.flags['out'] : 'out';
    const files = await shelterFiles(needPaths(args, 'which files or folders to put on sheets'));
    const verdicts = verdictsOf(await load(files), dayOf(args));
    if (verdicts.shelters.length === 0) throw new CannotRun('There is no shelter in these files.');
    const summary = summarise(verdicts, { system: unitsAsked(args) });
    await mkdir(out, { recursive: true });
    const made: Sheet[] = [];
    for (const [index, { loaded, drawings, taken }] of toShow(verdicts).entries()) {
      const shown = summary.shelters[index];
      if (taken === undefined || shown === undefined) continue;
      const { name, title } = loaded;
      const system = systemOf(args, loaded);
      const buying = await buyingOf(loaded.world, args);
      const counted = await materialsExactOf(taken.takeoff, taken.ground, loadSolver, buying.options);
      const materials = materialsText(name, counted, system, buying.priceLists);
      output.out(`${materialsTotals(name, counted)}\n`);
      await writeFile(join(out, `${name}-materials.txt`), materials);
      const drawn = drawings(system).map(({ view, drawing }) => ({ view, svg: toSvg(drawing, 'paper') }));
      for (const { view, svg } of drawn) await writeFile(join(out, `${name}-${view}.svg`), svg);
      made.push({ shelter: shown, title, drawings: drawn, materials });
    }
    const page = join(out, 'index.html');
    await writeFile(page, sheetPage(made));
    output.out(`\n${textReport(summary, { all: false })}`);
    output.out(`\nDrawings and material lists are in ${out}. The page that shows them all: ${page}\n`);
    return exit.clean;
  },
};

/** What goes on a sheet; nothing is counted of what cannot be worked out. */
interface ToShow {
  readonly loaded: LoadedShelter;
  readonly drawings: (system: System) => readonly { readonly view: string; readonly drawing: Drawing }[];
  readonly taken?: Taken;
}

/** In the order of the summary: shelters, then ranges, which are drawn from above. */
function toShow({ shelters, ranges }: Verdicts): readonly ToShow[] {
  return [
    ...shelters.map(({ loaded, evaluation }): ToShow => {
      if (evaluation === undefined) return { loaded, drawings: () => [] };
      const { shelter } = evaluation;
      const drawings = (system: System) =>
        Object.entries(views).map(([view, draw]) => ({ view, drawing: draw(shelter, { system }) }));
      return { loaded, drawings, taken: takenBy(shelter) };
    }),
    ...ranges.map(({ loaded, range }): ToShow => {
      const drawings = (system: System) => [{ view: 'plan', drawing: rangePlanView(range, { system }) }];
      return { loaded, drawings, taken: takenBy(range) };
    }),
  ];
}

/** One line a shelter: how much of what it takes, and what it costs. */
function materialsTotals(name: string, counted: Materials): string {
  const { cost, currency, lines } = counted;
  const priced =
    cost.shares.length === 0
      ? 'no prices'
      : `${moneyText(cost.total, currency)}${cost.complete ? '' : ' so far'}`;
  return `${name}: ${lines.length} kinds of material, ${priced}`;
}
