/** What the files and flags say of prices and stock on hand, put as the take-off wants it. */
import { readFile } from 'node:fs/promises';
import {
  newNotes,
  type PriceListNote,
  type Project,
  readPriceLists,
  readProject,
  readYard,
  type SpecWorld,
} from '@tautline/shelter';
import { type MaterialOptions, type PriceList, pricesFromCsv, stockOnHand } from '@tautline/takeoff';
import type { CommandArguments } from './commands/command.ts';
import { CannotRun } from './exit.ts';

export interface Buying {
  readonly options: MaterialOptions;
  readonly project: Project;
  readonly priceLists: readonly PriceListNote[];
}

/** Flags that go with buying, for the options of a command. */
export const buyingFlags = { prices: { type: 'string' }, 'frame-life': { type: 'string' } } as const;

const YEAR = 365.25 * 86_400;

/** Throws CannotRun when a price file cannot be read, or a life is no number of years. */
export async function buyingOf(world: SpecWorld, args: CommandArguments): Promise<Buying> {
  const notes = newNotes();
  const project = readProject(world, notes);
  const prices = await pricesAsked(args);
  const frameLife = frameLifeOf(args);
  return {
    project,
    priceLists: readPriceLists(world),
    options: {
      ...stockOnHand(readYard(world, notes)),
      ...(project.currency === undefined ? {} : { currency: project.currency }),
      ...(prices === undefined ? {} : { prices }),
      ...(frameLife === undefined ? {} : { frameLife }),
    },
  };
}

/** The life that --frame-life gives, s. Throws CannotRun when it is no number of years. */
export function frameLifeOf(args: CommandArguments): number | undefined {
  const years = args.flags['frame-life'];
  if (years === undefined) return undefined;
  const life = Number(years) * YEAR;
  if (!(Number.isFinite(life) && life > 0))
    throw new CannotRun(
      `--frame-life takes a number of years, as in --frame-life 10; it got '${String(years)}'.`,
    );
  return life;
}

/** The price list that --prices names. Throws CannotRun when it cannot be read. */
export async function pricesAsked(args: CommandArguments): Promise<PriceList | undefined> {
  const file = args.flags['prices'];
  return typeof file === 'string' ? pricesIn(file) : undefined;
}

async function pricesIn(file: string): Promise<PriceList> {
  const text = await readFile(file, 'utf8').catch(() => {
    throw new CannotRun(`There is no price list '${file}' that can be read.`);
  });
  const { prices, problems } = pricesFromCsv(text, file);
  if (problems.length > 0) {
    const told = problems.map(({ line, message }) => `${file}:${line}  ${message}`).join('\n');
    throw new CannotRun(`The price list cannot be used as it is:\n${told}`);
  }
  return prices;
}
