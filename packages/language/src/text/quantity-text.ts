/**
 * How a quantity looks in a text: `4.2 m`, `7 ft 6 in`, `1-3/8 in`, `1:4`, `-2 degC`, `0.15 1/m`. One
 * token, so that `in`, `t` or `min` need not be reserved words anywhere else.
 */
import { unitOf } from '@tautline/quantity';

/** One number of a quantity with the unit behind it; offsets into the scanned text. */
export interface QuantityPart {
  readonly number: string;
  readonly numberStart: number;
  readonly unit?: string;
  readonly unitStart?: number;
}

export interface ScannedQuantity {
  readonly end: number;
  readonly parts: readonly QuantityPart[];
}

const NUMBER = /-?(?:\d+(?:-| +)\d+\/\d+|\d+\/\d+|(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)/uy;
const RATIO = /\d+(?:\.\d+)?:\d+(?:\.\d+)?/uy;
const GAP = /[ \t]*/uy;
const UNIT =
  /(?:1\/)?[\p{L}%°µ]+(?:[1-9²³⁴](?![\p{L}\p{N}]))?(?:[./·⋅]\p{L}+(?:[1-9²³⁴](?![\p{L}\p{N}]))?)*/uy;

function matchAt(pattern: RegExp, text: string, offset: number): string | undefined {
  pattern.lastIndex = offset;
  return pattern.exec(text)?.[0];
}

/**
 * The unit written right after a number. A plain word that is no unit stays a word of the sentence
 * (`2 at 3 m`); a compound such as `kg/foo` can only be meant as a unit and is taken as one.
 */
function unitAt(text: string, offset: number): string | undefined {
  const run = matchAt(UNIT, text, offset);
  if (run === undefined) return undefined;
  if (unitOf(run)) return run;
  return /[/·⋅.°%]/u.test(run) ? run : undefined;
}

function partAt(text: string, offset: number): { part: QuantityPart; end: number } | undefined {
  const number = matchAt(NUMBER, text, offset);
  if (number === undefined) return undefined;
  const numberEnd = offset + number.length;
  const unitStart = numberEnd + (matchAt(GAP, text, numberEnd)?.length ?? 0);
  const unit = unitAt(text, unitStart);
  return unit === undefined
    ? { part: { number, numberStart: offset }, end: numberEnd }
    : { part: { number, numberStart: offset, unit, unitStart }, end: unitStart + unit.length };
}

/** Reads a quantity that starts at `offset`, or undefined when none does. Never throws. */
export function scanQuantity(text: string, offset: number): ScannedQuantity | undefined {
  const ratio = matchAt(RATIO, text, offset);
  if (ratio !== undefined)
    return { end: offset + ratio.length, parts: [{ number: ratio, numberStart: offset }] };
  const first = partAt(text, offset);
  if (!first) return undefined;
  const parts = [first.part];
  let end = first.end;
  while (parts.at(-1)?.unit !== undefined) {
    const start = end + (matchAt(GAP, text, end)?.length ?? 0);
    const next = text[start] === '-' ? undefined : partAt(text, start);
    if (next?.part.unit === undefined) break;
    parts.push(next.part);
    end = next.end;
  }
  return { end, parts };
}
