import { writeFile } from 'node:fs/promises';
import { toSvg, type ViewName, views } from '@tautline/drawing';
import { CannotRun, exit } from '../exit.ts';
import { oneShelter } from '../one-shelter.ts';
import type { Command } from './command.ts';
import { needPaths, oneOf, systemOf } from './flags.ts';

const names = Object.keys(views) as readonly ViewName[];

export const draw: Command = {
  name: 'draw',
  usage:
    'draw FILE --view section|plan|side|setting-out|bend-template --out FILE.svg [--shelter NAME] [--units metric|us] [--theme paper|light|dark|contrast]',
  does: 'Draws a shelter with its dimensions, as SVG.',
  options: {
    view: { type: 'string' },
    out: { type: 'string' },
    shelter: { type: 'string' },
    units: { type: 'string' },
    theme: { type: 'string' },
  },
  async run(args, output) {
    const view = oneOf(args, 'view', names, 'section');
    const theme = oneOf(args, 'theme', ['paper', 'light', 'dark', 'contrast'] as const, 'paper');
    const out = args.flags['out'];
    if (typeof out !== 'string') throw new CannotRun('Say where to write the drawing: --out FILE.svg');
    const { shelter, loaded } = await oneShelter(
      needPaths(args, 'which file to draw')[0] as string,
      args.flags['shelter'],
    );
    const drawing = views[view](shelter, { system: systemOf(args, loaded) });
    if (!drawing) throw new CannotRun(`${shelter.name} has nothing for a ${view}: no pipe of it is bent.`);
    await writeFile(out, toSvg(drawing, theme));
    output.out(`Drew the ${view} of ${shelter.name} into ${out}.\n`);
    return exit.clean;
  },
};
