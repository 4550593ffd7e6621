/** What a resolver gathers on its way: problems, assumed values, and what is said but not modelled. */
import type { KindName } from '@tautline/quantity';
import { kindOf } from '@tautline/quantity';
import type { Origin } from '../model/origin.ts';
import type { Assumed, FactKind, Unmodelled } from '../model/shelter.ts';
import { factNode, numberIn } from '../spec/nodes.ts';
import type { Problem, SpecNode } from '../spec/spec.ts';
import { entryFor } from '../vocabulary/vocabulary.ts';

export interface Notes {
  readonly problems: Problem[];
  readonly assumed: Assumed[];
  readonly unmodelled: Unmodelled[];
}

export function newNotes(): Notes {
  return { problems: [], assumed: [], unmodelled: [] };
}

export function problem(
  notes: Notes,
  id: string,
  message: string,
  origin: Origin,
  severity: Problem['severity'] = 'error',
): undefined {
  const again = notes.problems.some(
    (one) => one.id === id && one.message === message && one.origin === origin,
  );
  if (!again) notes.problems.push({ id, severity, message, origin });
  return undefined;
}

/** Reports that a block lacks a fact, with a line that would say it. */
export function missing(notes: Notes, block: SpecNode, path: readonly string[]): undefined {
  const entry = entryFor(path);
  const word = path.at(-1);
  const example = entry ? `, as in \`${entry.example}\`. ${entry.doc}` : '';
  return problem(notes, 'missing-fact', `say '${word}' of the ${block.word}${example}`, block.origin);
}

/** Takes a value the user did not give, and records it. */
export function assume<T extends number | string>(
  notes: Notes,
  part: string,
  fact: string,
  value: T,
  kind: FactKind,
  why: string,
  origin: Origin,
): T {
  // A stock item that several parts are made of is read for each of them, but assumes only once.
  const again = notes.assumed.some(
    (one) => one.part === part && one.fact === fact && one.value === value && one.origin === origin,
  );
  if (!again) notes.assumed.push({ part, fact, value, kind, why, origin });
  return value;
}

/** Bounds of a fact, SI. Outside them lies a slip of the pen, not a shelter. */
export interface Bounds {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
}

/** A length that a shelter can have: over zero and up to 1 km, unless told otherwise. */
export const someLength: Bounds = { above: 0, most: 1000 };

/** The number a fact says, if it is said and within bounds; what is out of bounds is a problem. */
export function numberFact(
  notes: Notes,
  block: SpecNode | undefined,
  word: string,
  bounds: Bounds = {},
  slot = 'value',
): number | undefined {
  const fact = factNode(block, word);
  const value = numberIn(fact, slot);
  if (!fact || value === undefined) return undefined;
  return within(notes, value, word, bounds, fact);
}

/** The value when it is finite and within bounds; else a problem at the fact. */
export function within(
  notes: Notes,
  value: number,
  word: string,
  { above, least, most }: Bounds,
  fact: SpecNode,
): number | undefined {
  const say = (limit: string) => problem(notes, 'out-of-range', `${word} must be ${limit}`, fact.origin);
  if (!Number.isFinite(value)) return say('a plain number');
  if (above !== undefined && !(value > above))
    return say(above === 0 ? 'more than nothing' : `more than ${above}`);
  if (least !== undefined && value < least)
    return say(least === 0 ? 'nothing or more' : `at least ${inUnits(least, fact)}`);
  if (most !== undefined && value > most) return say(`no more than ${inUnits(most, fact)}`);
  return value;
}

/** A limit in the basic unit of the fact's kind, for a message. */
function inUnits(limit: number, fact: SpecNode): string {
  const kind = Object.values(fact.slots).find((value) => value.type === 'quantity')?.kind;
  if (kind === 'angle') return `${Math.round((limit * 180) / Math.PI)} deg`;
  const unit = kind === undefined ? '' : unitShown(kind);
  return unit === '' ? `${limit}` : `${limit} ${unit}`;
}

/** The SI unit of the kinds that bounds are given for. */
function unitShown(kind: KindName): string {
  const { noun } = kindOf(kind);
  return noun.includes('length') || noun.includes('thickness') ? 'm' : (si[kind] ?? '');
}

const si: Readonly<Record<string, string>> = {
  speed: 'm/s',
  force: 'N',
  'line-load': 'N/m',
  pressure: 'Pa',
  temperature: 'degC',
  mass: 'kg',
};
