import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { cautionLine } from '@tautline/book';
import { applySpecEdits, changed, editsByFile } from '@tautline/language';
import type { System } from '@tautline/quantity';
import {
  type Axis,
  axesOf,
  choicesOf,
  type Explored,
  editsAt,
  exploredJson,
  exploredMarkdown,
  exploredPage,
  exploredText,
  gridSize,
  headroomPlace,
  heldFixed,
  mostVariants,
  sourcesOf,
  valuesAt,
  valueText,
} from '@tautline/review';
import { buyingFlags } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import type { VariantTask } from '../explore/variant.ts';
import { shownPath } from '../files.ts';
import { type OneShelter, oneShelter } from '../one-shelter.ts';
import { runTasks } from '../threads/pool.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf, threadsOf } from './flags.ts';

/** Variants a thread works out before it tells how far it is. */
const lot = 2;

const writers = { text: exploredText, markdown: exploredMarkdown, html: exploredPage } as const;

let runs = 0;

export const explore: Command = {
  name: 'explore',
  usage:
    'explore FILE [--shelter NAME] [--write N] [--format text|markdown|html|json] [--out FILE] [--threads N] [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'Works out every combination of the facts that a shelter says to `vary`: findings, cost, headroom; marks those that no other beats. --write N says variant N in the text. An interrupt shows what is done so far.',
  options: {
    shelter: { type: 'string' },
    write: { type: 'string' },
    format: { type: 'string' },
    out: { type: 'string' },
    threads: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output, machine) {
    const form = oneOf(args, 'format', ['text', 'markdown', 'html', 'json'] as const, 'text');
    const on = dayOf(args);
    const file = needPaths(args, 'which file to explore')[0] as string;
    const one = await oneShelter(file, args.flags['shelter']);
    const system = systemOf(args, one.loaded);
    const axes = axesOfOne(one);
    const size = gridSize(axes);
    if (args.flags['write'] !== undefined) {
      output.out(await write(one, axes, String(args.flags['write']), system));
      return exit.clean;
    }
    const tasks: VariantTask[] = [];
    runs += 1;
    for (let at = 0; at < size; at += lot) {
      const indices = Array.from({ length: Math.min(lot, size - at) }, (_, index) => at + index);
      tasks.push({
        type: 'variants',
        run: runs,
        file,
        shelter: one.loaded.name,
        indices,
        flags: args.flags,
        on,
      });
    }
    const stopped = machine.untilStopped();
    const results = await runTasks(tasks, {
      machine: { ...machine, threads: threadsOf(args, machine) },
      stopped,
      onDone: (done) => machine.progress(`Worked out ${Math.min(size, done * lot)} of ${size} variants`),
    });
    machine.progress('');
    const explored: Explored = {
      shelter: one.loaded.name,
      file: shownPath(one.loaded.uri),
      axes,
      choices: choicesOf(
        axes,
        results.flatMap((result) => result ?? []),
      ),
      of: size,
      heldFixed: heldFixed(one.shelter, axes, on, system),
      headroomAt: headroomPlace(one.shelter),
    };
    const made = form === 'json' ? exploredJson(explored) : writers[form](explored, system, cautionLine);
    const out = args.flags['out'];
    if (typeof out === 'string') {
      await writeFile(out, made);
      output.out(`Wrote the variants of ${explored.shelter} into ${out}.\n`);
    } else output.out(made);
    return stopped.aborted ? exit.failed : exit.clean;
  },
};

function axesOfOne({ loaded }: OneShelter): readonly Axis[] {
  const { shelter } = sourcesOf(loaded);
  const { axes, problems } = shelter ? axesOf(shelter) : { axes: [], problems: [] };
  if (problems.length > 0) throw new CannotRun(problems.join('\n'));
  if (axes.length === 0)
    throw new CannotRun(
      `${loaded.name} says nothing to vary. Add a line such as \`vary bows spaced from 3 ft to 5 ft by 6 in\`.`,
    );
  const size = gridSize(axes);
  if (size > mostVariants)
    throw new CannotRun(
      `${size} combinations are more than the ${mostVariants} that can be tried: take larger steps.`,
    );
  return axes;
}

/** Says the values of a variant in the text they stand in. */
async function write(one: OneShelter, axes: readonly Axis[], asked: string, system: System): Promise<string> {
  const number = Number(asked);
  if (!Number.isInteger(number) || number < 1 || number > gridSize(axes))
    throw new CannotRun(`--write takes the number of a variant, 1 to ${gridSize(axes)}; it got '${asked}'.`);
  const edits = editsAt(axes, number - 1);
  const byFile = editsByFile(edits);
  const { uri, kind, name } = one.loaded;
  if (kind !== 'shelter' || byFile.size !== 1 || !byFile.has(uri))
    throw new CannotRun(
      `${name} takes its facts from another shelter: change that one, or say them in ${name} first.`,
    );
  const path = fileURLToPath(uri);
  const text = await readFile(path, 'utf8');
  const result = applySpecEdits(text, edits, system);
  if (!result.ok) throw new CannotRun(`Variant ${number} cannot be written: ${result.reason}.`);
  await writeFile(path, changed(text, result.changes));
  const values = valuesAt(axes, number - 1);
  const said = axes.map((axis, at) => `${axis.label} ${valueText(values[at], system)}`);
  return `Wrote variant ${number} into ${shownPath(uri)}: ${said.join(', ')}.\n`;
}
