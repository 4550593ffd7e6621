import { writeFile } from 'node:fs/promises';
import { planView, sectionView, sideView, toSvg } from '@tautline/drawing';
import { CannotRun, exit } from '../exit.ts';
import { oneShelter } from '../one-shelter.ts';
import type { Command } from './command.ts';
import { needPaths, oneOf, systemOf } from './flags.ts';

const views = { section: sectionView, plan: planView, side: sideView } as const;

export const draw: Command = {
  name: 'draw',
  usage:
    'draw FILE --view section|plan|side --out FILE.svg [--shelter NAME] [--units metric|us] [--theme paper|light|dark|contrast]',
  does: 'Draws a shelter with its dimensions, as SVG.',
  options: {
    view: { type: 'string' },
    out: { type: 'string' },
    shelter: { type: 'string' },
    units: { type: 'string' },
    theme: { type: 'string' },
  },
  async run(args, output) {
    const view = oneOf(args, 'view', ['section', 'plan', 'side'] as const, 'section');
    const theme = oneOf(args, 'theme', ['paper', 'light', 'dark', 'contrast'] as const, 'paper');
    const out = args.flags['out'];
    if (typeof out !== 'string') throw new CannotRun('Say where to write the drawing: --out FILE.svg');
    const { shelter, loaded } = await oneShelter(
      needPaths(args, 'which file to draw')[0] as string,
      args.flags['shelter'],
    );
    await writeFile(out, toSvg(views[view](shelter, { system: systemOf(args, loaded) }), theme));
    output.out(`Drew the ${view} of ${shelter.name} into ${out}.\n`);
    return exit.clean;
  },
};
