/** What the server and its workers say to each other. Plain data. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import { kept } from '@tautline/structure';
import { catalogueScheme } from '../protocol.ts';
import type { Billed } from './bill.ts';
import type { AnalysisOptions, AnalysisResult, FixRequest, PricedFix } from './result.ts';
import type { Swapped, SwapRequest } from './swap.ts';

export type Definitions = readonly (readonly [string, SpecDefinition])[];

/** A world without what the other side already knows of it. */
export interface Packed extends Omit<SpecWorld, 'definitions' | 'written'> {
  readonly own: OwnWords;
}

/** What a world says itself. Definitions go by their numbers: while somebody types, all but one were told before. */
export interface OwnWords {
  readonly definitions: readonly (readonly [name: string, number: number])[];
  /** Those that are new to the other side, as texts: they cross faster than objects. */
  readonly fresh: readonly (readonly [number: number, json: string])[];
  /** Set where all that was told before may be forgotten. */
  readonly anew?: true;
  /** Units it is written in: what is usual there is taken where nothing is said. */
  readonly written?: SpecWorld['written'];
}

/** A question about one shelter or range. */
interface About {
  readonly id: number;
  /** Absent where they are those of the question before. */
  readonly own?: OwnWords;
  readonly shelter: string;
}

/**
 * `stop` is one 32-bit number, set to 1 to stop the work while it runs; absent where memory cannot be shared.
 */
export type ToWorker =
  /** Definitions that every world to come has too: the catalogue, sent once. */
  | { readonly type: 'know'; readonly definitions: Definitions }
  | (About & {
      readonly type: 'analyse';
      readonly options: AnalysisOptions;
      readonly stop?: SharedArrayBuffer;
    })
  | (About & { readonly type: 'bill' })
  | (About & { readonly type: 'fixes'; readonly request: FixRequest })
  | (About & { readonly type: 'swap'; readonly request: SwapRequest })
  | {
      readonly type: 'job';
      readonly id: number;
      readonly job: string;
      readonly worlds: readonly Packed[];
      readonly input: unknown;
      /** What it has when it is stopped is wanted. */
      readonly partial: boolean;
      readonly stop?: SharedArrayBuffer;
    }
  | { readonly type: 'cancel'; readonly id: number };

export type FromWorker =
  | { readonly type: 'analysed'; readonly id: number; readonly result: AnalysisResult }
  | { readonly type: 'billed'; readonly id: number; readonly billed: Billed }
  | { readonly type: 'fixed'; readonly id: number; readonly fixes: readonly PricedFix[] }
  | { readonly type: 'swapped'; readonly id: number; readonly swapped?: Swapped }
  | { readonly type: 'progress'; readonly id: number; readonly share: number; readonly next: string }
  | { readonly type: 'done'; readonly id: number; readonly output: unknown }
  | { readonly type: 'broke-off'; readonly id: number; readonly reason: string }
  /** A question taken back before it was begun, or a job that was stopped. */
  | { readonly type: 'dropped'; readonly id: number };

/** One end of the line to the other side: a worker thread, a web worker, or in tests a plain queue. */
export interface Port<Out, In> {
  post(message: Out): void;
  onMessage(listener: (message: In) => void): void;
  /** Called once when the other side is gone. */
  onGone(listener: (reason: string) => void): void;
  close(): void;
}

/** Of a definition that does not change; imported ones stay the same object while somebody types. */
const texts = new WeakMap<SpecDefinition, string>();

export function definitionText(definition: SpecDefinition): string {
  const text = texts.get(definition) ?? JSON.stringify(definition);
  texts.set(definition, text);
  return text;
}

/** A number for each text, never given twice: comparing these takes less than comparing texts. */
const numbers = new Map<string, number>();
const numbered = new WeakMap<SpecDefinition, number>();
const MOST_NUMBERED = 1000;
let lastNumber = 0;

/** The same for definitions that say the same, and another one for others. */
export function definitionNumber(definition: SpecDefinition): number {
  const known = numbered.get(definition);
  if (known !== undefined) return known;
  const text = definitionText(definition);
  let number = numbers.get(text);
  if (number === undefined) {
    lastNumber += 1;
    number = lastNumber;
  }
  kept(numbers, text, number, MOST_NUMBERED);
  numbered.set(definition, number);
  return number;
}

type Own = readonly (readonly [name: string, definition: SpecDefinition])[];
const ownBefore = new WeakMap<SpecWorld['definitions'], Own>();

/** What a world says itself, without the catalogue. */
export function ownOf({ definitions }: SpecWorld): Own {
  const before = ownBefore.get(definitions);
  if (before) return before;
  const own = [...definitions].filter(([, { origin }]) => !fromCatalogue(origin));
  ownBefore.set(definitions, own);
  return own;
}

/** Everything in a world that is not of the catalogue, as one text. */
const ownText = (world: SpecWorld): string =>
  [world.written, ...ownOf(world).flatMap(([name, one]) => [name, definitionText(one)])].join('\n');

/** Definitions and the units that are usual in a world, as a short text: the same for worlds that say the same of them. */
export const numbersOf = ({ written }: SpecWorld, definitions: Own): string =>
  [written, ...definitions.map(([name, one]) => `${name}#${definitionNumber(one)}`)].join(' ');

/**
 * The same as a short mark: FNV-1a, 32 bits, from two starting values. Two worlds with the same mark by chance would
 * only keep a note from being shown.
 */
export function ownMark(world: SpecWorld): string {
  const said = ownText(world);
  let [one, two] = [0x811c9dc5, 0x01234567];
  for (let at = 0; at < said.length; at += 1) {
    const unit = said.charCodeAt(at);
    one = Math.imul(one ^ unit, 0x01000193);
    two = Math.imul(two ^ unit, 0x01000193);
  }
  return `${(one >>> 0).toString(36)}-${(two >>> 0).toString(36)}`;
}

/** Whether something was said in the built-in catalogue, by its origin. */
export const fromCatalogue = (origin: string): boolean => origin.startsWith(`${catalogueScheme}:`);

/** What the other side knows: definitions of the catalogue by their origins, others by their numbers. */
export interface Told {
  readonly catalogue: Set<string>;
  readonly numbers: Set<number>;
}

export const nothingTold = (): Told => ({ catalogue: new Set(), numbers: new Set() });

/** Definitions that the other side keeps: some hundred keystrokes in a file, and what it imports. */
const MOST_TOLD = 600;

/** Parts a world into what is to be told of the catalogue (`fresh`) and the rest, and takes down that both are told. */
export function partedWorld(
  world: SpecWorld,
  told: Told,
): { readonly fresh: Definitions; readonly packed: Packed } {
  const { definitions, written: _written, ...rest } = world;
  const fresh: (readonly [string, SpecDefinition])[] = [];
  for (const [name, definition] of definitions) {
    if (!fromCatalogue(definition.origin) || told.catalogue.has(definition.origin)) continue;
    told.catalogue.add(definition.origin);
    fresh.push([name, definition]);
  }
  return { fresh, packed: { ...rest, own: ownWords(world, told) } };
}

function ownWords(world: SpecWorld, { numbers: told }: Told): OwnWords {
  const anew = told.size > MOST_TOLD;
  if (anew) told.clear();
  const fresh: (readonly [number, string])[] = [];
  const definitions = ownOf(world).map(([name, definition]) => {
    const number = definitionNumber(definition);
    if (!told.has(number)) fresh.push([number, definitionText(definition)]);
    told.add(number);
    return [name, number] as const;
  });
  return {
    definitions,
    fresh,
    ...(anew ? { anew } : {}),
    ...(world.written === undefined ? {} : { written: world.written }),
  };
}

/** Definitions that were told, by their numbers. */
export type Heard = Map<number, SpecDefinition>;

/**
 * The world that these words stand for, with what is known of the catalogue. To be called once for all words that
 * come, in their order: later ones leave out what these tell. Throws where that was not done.
 */
export function worldWith(
  known: Iterable<readonly [string, SpecDefinition]>,
  { definitions, fresh, anew, written }: OwnWords,
  heard: Heard,
): SpecWorld {
  if (anew) heard.clear();
  for (const [number, text] of fresh) {
    const definition = JSON.parse(text) as SpecDefinition;
    texts.set(definition, text);
    heard.set(number, definition);
  }
  const own = definitions.map(([name, number]) => {
    const definition = heard.get(number);
    if (!definition) throw new Error(`the definition of ${name} was never told`);
    return [name, definition] as const;
  });
  return { definitions: new Map([...known, ...own]), ...(written === undefined ? {} : { written }) };
}

/** Browsers share memory only with pages that are isolated from others; elsewhere work under way cannot be told to stop. */
export const newStop = (): SharedArrayBuffer | undefined =>
  typeof SharedArrayBuffer === 'undefined' ? undefined : new SharedArrayBuffer(4);

export const tellToStop = (stop: SharedArrayBuffer): void => void Atomics.store(new Int32Array(stop), 0, 1);

/** Whether the other side has told to stop. */
export function stopped(stop: SharedArrayBuffer | undefined): () => boolean {
  const flag = stop && new Int32Array(stop);
  return () => flag !== undefined && Atomics.load(flag, 0) === 1;
}
