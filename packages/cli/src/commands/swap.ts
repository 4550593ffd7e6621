import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Finding, messageText, verdictText } from '@tautline/checks';
import { applySpecEdits, changed, editsByFile } from '@tautline/language';
import type { System } from '@tautline/quantity';
import { type Item, newNotes, resolveItems, standIns, swapEdits } from '@tautline/shelter';
import { type Materials, materials, moneyText } from '@tautline/takeoff';
import { buyingFlags, buyingOf } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { loadTexts, shelterFiles } from '../files.ts';
import { type Verdict, verdictsOf } from '../verdicts.ts';
import type { Command, CommandArguments } from './command.ts';
import { dayOf, needPaths, systemOf } from './flags.ts';

/** So many stand-ins are tried when none is said: enough to see which way to go. */
const mostTried = 8;

export const swap: Command = {
  name: 'swap',
  usage: 'swap FILE --from ITEM [--to ITEM] [--write] [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'Uses another stock item in the place of one, with the fittings that go along, and tells what that does to findings and cost; without --to, tries the nearest items.',
  options: {
    from: { type: 'string' },
    to: { type: 'string' },
    write: { type: 'boolean' },
    units: { type: 'string' },
    on: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output) {
    const [file] = await shelterFiles([needPaths(args, 'in which file to swap')[0] as string]);
    if (file === undefined) throw new CannotRun('There is no shelter file there.');
    const text = await readFile(file, 'utf8');
    const before = await stateOf(file, text, args);
    const system = systemOf(args, before.verdicts[0]!.loaded);
    const from = itemNamed(before.stock, args.flags['from'], '--from');
    const asked = args.flags['to'];
    const tried =
      asked === undefined
        ? standIns(from, before.stock).slice(0, mostTried)
        : [itemNamed(before.stock, asked, '--to')];
    const made: { to: Item; text: string; after: State; along: string }[] = [];
    for (const to of tried) {
      const swapped = swappedText(file, text, before, from, to, system);
      made.push({ to, ...swapped, after: await stateOf(file, swapped.text, args) });
    }
    const [only] = made;
    if (only === undefined) {
      output.out(`Nothing of the same kind as ${from.id} is in stock.\n`);
      return exit.clean;
    }
    output.out(`${from.id}  ${from.title}\n  ${stateText(before)}\n`);
    for (const { to, after, along } of made) {
      output.out(`\n${to.id}  ${to.title}\n  ${stateText(after)}${costChange(before, after)}${along}\n`);
      if (asked === undefined && after.failing.length > 0)
        output.out(`  fails ${[...new Set(after.failing.map(({ id }) => id))].join(', ')}\n`);
    }
    if (asked === undefined) {
      output.out('\nSay one of them with --to, and --write to put it into the file.\n');
      return exit.clean;
    }
    for (const line of changesText(before, only.after, system)) output.out(`  ${line}\n`);
    if (args.flags['write'] === true) {
      await writeFile(file, only.text);
      output.out(`\nWrote ${only.to.id} in the place of ${from.id} into ${args.paths[0]}.\n`);
    }
    return only.after.failing.length > 0 ? exit.findings : exit.clean;
  },
};

interface State {
  readonly verdicts: readonly Verdict[];
  readonly stock: readonly Item[];
  readonly failing: readonly Finding[];
  readonly watched: readonly Finding[];
  readonly counted: readonly Materials[];
}

/** What the checks and the take-off say of every shelter of a text. */
async function stateOf(file: string, text: string, args: CommandArguments): Promise<State> {
  const verdicts = verdictsOf(await loadTexts([{ file, text }]), dayOf(args));
  const wrong = verdicts.problems.find((problem) => problem.severity === 'error');
  const [first] = verdicts.shelters;
  if (wrong !== undefined || first === undefined)
    throw new CannotRun(
      wrong === undefined ? `There is no shelter in ${file}.` : `${file} cannot be judged: ${wrong.message}`,
    );
  const findings = verdicts.shelters.flatMap((verdict) => verdict.findings.map(({ finding }) => finding));
  const counted: Materials[] = [];
  for (const { evaluation, loaded } of verdicts.shelters) {
    if (evaluation === undefined) continue;
    counted.push(materials(evaluation.shelter, (await buyingOf(loaded.world, args)).options));
  }
  return {
    verdicts: verdicts.shelters,
    stock: resolveItems(first.loaded.world, newNotes()),
    failing: findings.filter(({ severity }) => severity === 'error'),
    watched: findings.filter(({ severity }) => severity === 'warning'),
    counted,
  };
}

function itemNamed(stock: readonly Item[], name: string | boolean | undefined, flag: string): Item {
  if (typeof name !== 'string') throw new CannotRun(`Say which item: ${flag} ITEM.`);
  const item = stock.find((entry) => entry.id === name);
  if (item === undefined) throw new CannotRun(`There is no stock item '${name}'.`);
  return item;
}

function swappedText(
  file: string,
  text: string,
  { verdicts, stock }: State,
  from: Item,
  to: Item,
  system: System,
): { text: string; along: string } {
  const uri = pathToFileURL(file).href;
  const swaps = verdicts.flatMap(({ loaded }) => {
    const block = loaded.world.definitions.get(loaded.name);
    return block === undefined ? [] : [swapEdits(block, from, to, stock)];
  });
  const edits = editsByFile(swaps.flatMap((one) => one.edits)).get(uri) ?? [];
  if (edits.length === 0) throw new CannotRun(`No shelter in ${fileURLToPath(uri)} uses ${from.id}.`);
  const result = applySpecEdits(text, edits, system);
  if (!result.ok) throw new CannotRun(`${to.id} cannot be written in the place of ${from.id}.`);
  const said = new Set(
    swaps.flatMap(({ along, left }) => [
      ...along.map((one) => `\n  ${one.to.id} goes in for ${one.from.id}`),
      ...left.map(
        (one) => `\n  ${one.id} is made for ${from.id}; nothing in stock does the same for ${to.id}`,
      ),
    ]),
  );
  return { text: changed(text, result.changes), along: [...said].join('') };
}

function stateText({ failing, watched, counted }: State): string {
  const fail = failing.length === 1 ? '1 check fails' : `${failing.length} checks fail`;
  return `${fail}, ${watched.length} to watch, ${costText(counted)}`;
}

function costText(counted: readonly Materials[]): string {
  const total = totalOf(counted);
  const open = counted.some((one) => !one.cost.complete);
  return total === 0 && open
    ? 'no prices'
    : `${moneyText(total, counted[0]?.currency)}${open ? ' so far' : ''}`;
}

const totalOf = (counted: readonly Materials[]): number =>
  counted.reduce((sum, one) => sum + one.cost.total, 0);

/** Only said where the same things have prices; a total with gaps cannot be set against another. */
function costChange(before: State, after: State): string {
  const gaps = (state: State): number => state.counted.reduce((sum, one) => sum + one.cost.missing.length, 0);
  if (gaps(before) !== gaps(after)) return ' (not all of it has a price in both)';
  const more = totalOf(after.counted) - totalOf(before.counted);
  if (Math.abs(more) < 0.005) return ' (no change)';
  return ` (${more > 0 ? '+' : '-'}${moneyText(Math.abs(more), after.counted[0]?.currency)})`;
}

/** Findings that came, went or changed their verdict. */
function changesText(before: State, after: State, system: System): string[] {
  const key = (finding: Finding): string => `${finding.id}@${finding.part}`;
  const told = (state: State): readonly Finding[] => [...state.failing, ...state.watched];
  const then = new Map(told(before).map((finding) => [key(finding), finding] as const));
  const now = new Map(told(after).map((finding) => [key(finding), finding] as const));
  const line = (what: string, finding: Finding): string =>
    `${what}  ${finding.id}  ${verdictText(finding)}: ${messageText(finding.message, system)}`;
  return [
    ...[...now]
      .filter(([id, finding]) => then.get(id)?.verdict !== finding.verdict)
      .map(([, finding]) => line('came', finding)),
    ...[...then].filter(([id]) => !now.has(id)).map(([, finding]) => `went  ${finding.id}`),
  ];
}
