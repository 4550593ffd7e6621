import { cautionLine } from '@tautline/book';
import { messageText } from '@tautline/checks';
import type { LoadedShelter } from '@tautline/language';
import type { System } from '@tautline/quantity';
import { type Duty, dutiesOf, sourcesOf } from '@tautline/review';
import { factNode } from '@tautline/shelter';
import { CannotRun, exit } from '../exit.ts';
import { load, shelterFiles, shownPath } from '../files.ts';
import { type Verdict, type Verdicts, verdictsOf } from '../verdicts.ts';
import type { Command, CommandArguments } from './command.ts';
import { dayOf, needPaths, oneOf, systemOf } from './flags.ts';

interface ShownDuty extends Omit<Duty, 'origin' | 'why'> {
  readonly shelter: string;
  readonly why: string;
  readonly file: string;
  readonly line?: number;
}

export const due: Command = {
  name: 'due',
  usage: 'due PATHS... [--on DATE] [--within MONTHS] [--all] [--format text|json] [--units metric|us]',
  does: 'Lists what keeping the shelters asks for: films, meshes, sheets, straps and clips to renew, wood in the soil, acceptances that run out, inspections. Exit code 1 when something is overdue.',
  options: {
    on: { type: 'string' },
    within: { type: 'string' },
    all: { type: 'boolean' },
    format: { type: 'string' },
    units: { type: 'string' },
  },
  async run(args, output) {
    const form = oneOf(args, 'format', ['text', 'json'] as const, 'text');
    const on = dayOf(args);
    const within = monthsOf(args);
    const files = await shelterFiles(needPaths(args, 'which files or folders to look through'));
    if (files.length === 0) output.err(`There is no .shelter file in ${args.paths.join(', ')}.\n`);
    const verdicts = verdictsOf(await load(files), on, { gusts: false });
    const standing = verdicts.shelters.filter(({ loaded }) => stands(loaded));
    const leftOut = verdicts.shelters.flatMap(({ loaded }) => (stands(loaded) ? [] : [loaded.name]));
    const duties = standing
      .flatMap((verdict) => shownDuties(verdict, verdicts, { on, within }, systemOf(args, verdict.loaded)))
      .sort((a, b) => (a.day ?? '9').localeCompare(b.day ?? '9'));
    const unread = standing
      .filter(({ evaluation }) => evaluation === undefined)
      .map(({ loaded }) => loaded.name);
    const told = args.flags['all'] === true ? duties : duties.filter(({ state }) => state !== 'later');
    if (form === 'json')
      output.out(`${JSON.stringify({ on, within, duties: told, unread, leftOut }, null, 2)}\n`);
    else output.out(dueText(told, { later: duties.length - told.length, unread, leftOut, on, within }));
    return duties.some(({ state }) => state === 'overdue') ? exit.findings : exit.clean;
  },
};

/** A variant is another way to build a shelter; it is kept up where it says itself that it was built. */
const stands = ({ kind, name, world }: LoadedShelter): boolean =>
  kind !== 'variant' || factNode(world.definitions.get(name), 'built') !== undefined;

function monthsOf(args: CommandArguments): number {
  const value = args.flags['within'] ?? '3';
  const months = Number(value);
  if (!Number.isInteger(months) || months < 0 || months > 1200)
    throw new CannotRun(`--within takes a number of months; it got '${String(value)}'.`);
  return months;
}

function shownDuties(
  { loaded, evaluation }: Verdict,
  { workspace }: Verdicts,
  when: { readonly on: string; readonly within: number },
  system: System,
): ShownDuty[] {
  const { shelter } = sourcesOf(loaded);
  if (!shelter || !evaluation) return [];
  return dutiesOf(shelter, evaluation, when).map(({ origin, why, ...duty }) => {
    const place = workspace.placeOf(origin);
    return {
      shelter: loaded.name,
      ...duty,
      why: messageText(why, system),
      file: shownPath(place?.uri ?? loaded.uri),
      ...(place === undefined ? {} : { line: place.from.line + 1 }),
    };
  });
}

interface Told {
  readonly later: number;
  readonly unread: readonly string[];
  readonly leftOut: readonly string[];
  readonly on: string;
  readonly within: number;
}

function dueText(duties: readonly ShownDuty[], { later, unread, leftOut, on, within }: Told): string {
  const groups = [
    ['Overdue', 'overdue'],
    [`Due within ${within} months`, 'due'],
    ['Later', 'later'],
    ['Not known when', 'not known'],
  ] as const;
  const lines = groups.flatMap(([title, state]) => {
    const some = duties.filter((duty) => duty.state === state);
    return some.length === 0 ? [] : [title, ...some.flatMap(dutyLines), ''];
  });
  return [
    `Counted to ${on}.`,
    '',
    ...(lines.length === 0 ? ['Nothing is due.', ''] : lines),
    ...(later > 0 ? [`${later} more fall due later (--all lists them).`] : []),
    ...unread.map((name) => `Not looked at: ${name} cannot be worked out (see tautline check).`),
    ...leftOut.map(
      (name) =>
        `Left out: ${name}, a variant, another way to build a shelter: one that stands says \`built\`.`,
    ),
    cautionLine,
    '',
  ].join('\n');
}

function dutyLines({ day, shelter, what, why, file, line }: ShownDuty): string[] {
  return [
    `  ${day ?? '          '}  ${shelter}: ${what}`,
    `              ${why}`,
    `              ${file}${line === undefined ? '' : `:${line}`}`,
  ];
}
