import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { newNotes, readProject } from '@tautline/shelter';
import { pricesAsked } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { shelterFiles, shownPath } from '../files.ts';
import { neighbourDocument, neighbourJson } from '../neighbour/report.ts';
import { neighbourOf } from '../neighbour/stand-ins.ts';
import { neighbourWorld } from '../neighbour/world.ts';
import { oneShelter } from '../one-shelter.ts';
import { documentForms, documentMarkdown, documentPage, documentText } from '../report/document.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf } from './flags.ts';

export const neighbour: Command = {
  name: 'neighbour',
  usage:
    'neighbour FILE --has YARD.shelter [--shelter NAME] [--format text|markdown|html|json] [--out FILE] [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'For someone who builds from the spec with what they have: for each item of the shelter, whether it lies in the yard of the other file, which of what lies there stands in for it, and what that does to findings, cutting and cost. Exit code 1 when all of it together makes something fail that did not.',
  options: {
    has: { type: 'string' },
    shelter: { type: 'string' },
    format: { type: 'string' },
    out: { type: 'string' },
    prices: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
  },
  async run(args, output) {
    const form = oneOf(args, 'format', documentForms, 'text');
    const on = dayOf(args);
    const file = needPaths(args, 'the file of the shelter to build')[0] as string;
    const has = args.flags['has'];
    if (typeof has !== 'string')
      throw new CannotRun(
        'Say what the neighbour has: --has YARD.shelter, a file with a block like `yard { have 6 of emt-27 at 10 ft }`.',
      );
    const [theirs] = await shelterFiles([has]);
    const { loaded, workspace } = await oneShelter(file, args.flags['shelter'], [has]);
    const href = theirs === undefined ? '' : pathToFileURL(theirs).href;
    const their = workspace.worldOf(href);
    if (their === undefined) throw new CannotRun(`There is no shelter file '${has}'.`);
    const wrong = workspace.problems.find(({ uri, severity }) => uri === href && severity === 'error');
    if (wrong !== undefined)
      throw new CannotRun(`${has} cannot be read as it is, line ${wrong.from.line + 1}: ${wrong.message}`);
    const { world, have, twice } = neighbourWorld(loaded.world, their);
    if (have.length === 0)
      throw new CannotRun(
        `${has} says nothing on hand. Add a block like \`yard { have 6 of emt-27 at 10 ft }\`.`,
      );
    const prices = await pricesAsked(args);
    const { currency } = readProject(loaded.world, newNotes());
    const made = await neighbourOf(world, {
      name: loaded.name,
      have,
      on,
      ...(prices === undefined ? {} : { prices }),
      ...(currency === undefined ? {} : { currency }),
    });
    if (typeof made === 'string') throw new CannotRun(`${loaded.name} cannot be worked out: ${made}.`);
    const list = { ...made, shelter: loaded.name, file: shownPath(pathToFileURL(resolve(has)).href), twice };
    const system = systemOf(args, loaded);
    const text =
      form === 'json'
        ? neighbourJson(list, system)
        : { text: documentText, markdown: documentMarkdown, html: documentPage }[form](
            neighbourDocument(list, system, form !== 'text'),
          );
    const out = args.flags['out'];
    if (typeof out === 'string') {
      await writeFile(out, text);
      output.out(`Wrote what stands in for the items of ${loaded.name} into ${out}.\n`);
    } else output.out(text);
    return made.together?.fails === true ? exit.findings : exit.clean;
  },
};
