import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { planView, sectionView, sideView, toSvg } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import { type Materials, materialsExact } from '@tautline/takeoff';
import { exit } from '../exit.ts';
import { load, shelterFiles } from '../files.ts';
import { type Sheet, sheetPage } from '../report/sheet-page.ts';
import { summarise } from '../report/summary.ts';
import { textReport } from '../report/text.ts';
import { loadSolver } from '../solver.ts';
import { type Verdict, verdictsOf } from '../verdicts.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, systemOf } from './flags.ts';
import { materialsText } from './materials.ts';

const views = { section: sectionView, plan: planView, side: sideView } as const;

export const sheets: Command = {
  name: 'sheets',
  usage: 'sheets PATHS... --out DIR [--units metric|us] [--on DATE]',
  does: 'Writes drawings, findings and materials of every shelter, and one page that shows them all.',
  options: { out: { type: 'string' }, units: { type: 'string' }, on: { type: 'string' } },
  async run(args, output) {
    const out = typeof args.flags['out'] === 'string' ? args.flags['out'] : 'out';
    const system = systemOf(args);
    const files = await shelterFiles(needPaths(args, 'which files or folders to put on sheets'));
    const verdicts = verdictsOf(await load(files), dayOf(args));
    const summary = summarise(verdicts, system);
    await mkdir(out, { recursive: true });
    const made: Sheet[] = [];
    for (const [index, verdict] of verdicts.shelters.entries()) {
      const shown = summary.shelters[index];
      if (verdict.evaluation === undefined || shown === undefined) continue;
      const drawings = await drawInto(out, verdict, system);
      const counted = await materialsExact(verdict.evaluation.shelter, loadSolver);
      output.out(`${materialsTotals(verdict.loaded.name, counted, system)}\n`);
      await writeFile(
        join(out, `${verdict.loaded.name}-materials.txt`),
        materialsText(verdict.loaded.name, counted, system),
      );
      made.push({
        shelter: shown,
        title: verdict.loaded.title,
        drawings,
        materials: materialsText(verdict.loaded.name, counted, system),
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

/** One line a shelter: how much of what it takes. */
function materialsTotals(name: string, counted: Materials, system: System): string {
  const text = materialsText(name, counted, system).split('\n');
  const buy = text.filter((line) => line.startsWith('      buy ')).length;
  return `${name}: ${counted.lines.length} kinds of material, ${buy} of them bought by the length`;
}
