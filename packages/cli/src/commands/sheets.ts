import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { planView, sectionView, sideView, toSvg } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import { type Materials, materialsExact, moneyText } from '@tautline/takeoff';
import { buyingFlags, buyingOf } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { materialsText } from '../report/materials-text.ts';
import { type Sheet, sheetPage } from '../report/sheet-page.ts';
import { summarise } from '../report/summary.ts';
import { textReport } from '../report/text.ts';
import { loadSolver } from '../solver.ts';
import { type Verdict, verdictsOf } from '../verdicts.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, systemOf, unitsAsked } from './flags.ts';

const views = { section: sectionView, plan: planView, side: sideView } as const;

export const sheets: Command = {
  name: 'sheets',
  usage: 'sheets PATHS... --out DIR [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'Writes drawings, findings and materials of every shelter, and one page that shows them all.',
  options: { out: { type: 'string' }, units: { type: 'string' }, on: { type: 'string' }, ...buyingFlags },
  async run(args, output) {
    const out = typeof args.flags['out'] === 'string' ? args.flags['out'] : 'out';
    const files = await shelterFiles(needPaths(args, 'which files or folders to put on sheets'));
    const verdicts = verdictsOf(await load(files), dayOf(args));
    if (verdicts.shelters.length === 0) throw new CannotRun('There is no shelter in these files.');
    const summary = summarise(verdicts, { system: unitsAsked(args) });
    await mkdir(out, { recursive: true });
    const made: Sheet[] = [];
    for (const [index, verdict] of verdicts.shelters.entries()) {
      const shown = summary.shelters[index];
      if (verdict.evaluation === undefined || shown === undefined) continue;
      const system = systemOf(args, verdict.loaded);
      const drawings = await drawInto(out, verdict, system);
      const buying = await buyingOf(verdict.loaded.world, args);
      const counted = await materialsExact(verdict.evaluation.shelter, loadSolver, buying.options);
      const list = materialsText(verdict.loaded.name, counted, system, buying.priceLists);
      output.out(`${materialsTotals(verdict.loaded.name, counted)}\n`);
      await writeFile(join(out, `${verdict.loaded.name}-materials.txt`), list);
      made.push({
        shelter: shown,
        title: verdict.loaded.title,
        drawings,
        materials: list,
      });
    }
    const page = join(out, 'index.html');
    await writeFile(page, sheetPage(made));
    output.out(`\n${textReport(summary, { all: false })}`);
    output.out(`\nDrawings and material lists are in ${out}. The page that shows them all: ${page}\n`);
    return exit.clean;
  },
};

async function drawInto(
  out: string,
  verdict: Verdict,
  system: System,
): Promise<{ view: string; svg: string }[]> {
  const shelter = verdict.evaluation?.shelter;
  if (shelter === undefined) return [];
  const drawings = [];
  for (const [view, draw] of Object.entries(views)) {
    const svg = toSvg(draw(shelter, { system }), 'paper');
    await writeFile(join(out, `${shelter.name}-${view}.svg`), svg);
    drawings.push({ view, svg });
  }
  return drawings;
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
