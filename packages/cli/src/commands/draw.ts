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

/** Width of the sheet to aim at, as far as it was said. */
function wideOf(flag: string | boolean | undefined): { readonly wide?: number } {
  if (flag === undefined) return {};
  const wide = Number(flag);
  if (!(wide > 0)) throw new CannotRun('--wide takes a number of units of 1/96 in, such as --wide 500.');
  return { wide };
}

export const draw: Command = {
  name: 'draw',
  usage:
    'draw FILE --view section|plan|side|end|setting-out|bend-template --out FILE.svg [--shelter NAME] [--units metric|us] [--theme paper|light|dark|contrast] [--wide UNITS]',
  does: 'Draws a shelter with its dimensions, or a range from above, as SVG. With --wide 500, for a place only so many units (of 1/96 in) wide, with letters of the usual size.',
  options: {
    view: { type: 'string' },
    out: { type: 'string' },
    shelter: { type: 'string' },
    units: { type: 'string' },
    theme: { type: 'string' },
    wide: { type: 'string' },
  },
  async run(args, output) {
    const view = oneOf(args, 'view', names, 'section');
    const theme = oneOf(args, 'theme', ['paper', 'light', 'dark', 'contrast'] as const, 'paper');
    const out = args.flags['out'];
    if (typeof out !== 'string') throw new CannotRun('Say where to write the drawing: --out FILE.svg');
    const file = needPaths(args, 'which file to draw')[0] as string;
    const found = await shelterOrRange(file, args.flags['shelter']);
    const system = systemOf(args, found.loaded);
    const options = { system, ...wideOf(args.flags['wide']) };
    if ('range' in found) {
      if (view !== 'plan') throw new CannotRun(`A range is drawn from above: --view plan, not ${view}.`);
      await writeFile(out, toSvg(rangePlanView(found.range, options), theme));
      output.out(`Drew the plan of ${found.range.name} into ${out}.\n`);
      return exit.clean;
    }
    const { shelter } = found;
    const drawing = views[view](shelter, options);
    if (!drawing)
      throw new CannotRun(
        `There is no ${view} of ${shelter.name}: ${why[view] ?? 'it has nothing to show there'}.`,
      );
    await writeFile(out, toSvg(drawing, theme));
    output.out(`Drew the ${view} of ${shelter.name} into ${out}.\n`);
    return exit.clean;
  },
};
