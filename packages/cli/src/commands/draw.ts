import { writeFile } from 'node:fs/promises';
import { rangePlanView, toSvg, type ViewName, views } from '@tautline/drawing';
import { CannotRun, exit } from '../exit.ts';
import { shelterOrRange } from '../one-shelter.ts';
import type { Command } from './command.ts';
import { needPaths, oneOf, systemOf } from './flags.ts';

const names = Object.keys(views) as readonly ViewName[];

/** Why some shelters have no such view. */
const why: Partial<Readonly<Record<ViewName, string>>> = {
  end: 'its ends are open, without frames or doors',
  'bend-template': 'nothing of it is bent before it stands',
};

export const draw: Command = {
  name: 'draw',
  usage:
    'draw FILE --view section|plan|side|end|setting-out|bend-template --out FILE.svg [--shelter NAME] [--units metric|us] [--theme paper|light|dark|contrast]',
  does: 'Draws a shelter with its dimensions, or a range from above, as SVG.',
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
    const file = needPaths(args, 'which file to draw')[0] as string;
    const found = await shelterOrRange(file, args.flags['shelter']);
    const system = systemOf(args, found.loaded);
    if ('range' in found) {
      if (view !== 'plan') throw new CannotRun(`A range is drawn from above: --view plan, not ${view}.`);
      await writeFile(out, toSvg(rangePlanView(found.range, { system }), theme));
      output.out(`Drew the plan of ${found.range.name} into ${out}.\n`);
      return exit.clean;
    }
    const { shelter } = found;
    const drawing = views[view](shelter, { system });
    if (!drawing)
      throw new CannotRun(
        `There is no ${view} of ${shelter.name}: ${why[view] ?? 'it has nothing to show there'}.`,
      );
    await writeFile(out, toSvg(drawing, theme));
    output.out(`Drew the ${view} of ${shelter.name} into ${out}.\n`);
    return exit.clean;
  },
};
