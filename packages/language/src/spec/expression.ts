/** Values of calculations, exactly, with their dimensions. Says where and why one cannot be worked out. */
import {
  add,
  asKind,
  divide,
  type KindName,
  kinds,
  multiply,
  NONE,
  parseNumber,
  parseRatio,
  type QuantityPart,
  subtract,
  suggestUnits,
  toNumber,
  toSi,
  unitOf,
  type Quantity as Value,
} from '@tautline/quantity';
import { type Expression, isArithmetic, isLet, isName, isQuantity, type Let } from '../generated/ast.ts';
import { scanQuantity } from '../text/quantity-text.ts';
import type { Span } from './origin-key.ts';

export type Evaluated =
  | { readonly ok: true; readonly value: Value }
  | ({
      readonly ok: false;
      readonly id:
        | 'unknown-unit'
        | 'calculation'
        | 'unknown-name'
        | 'not-a-value'
        | 'circular'
        | 'incomplete';
      readonly message: string;
      readonly suggestions: readonly string[];
    } & Span);

type Failed = Extract<Evaluated, { ok: false }>;

function failed(
  id: Failed['id'],
  node: { readonly $cstNode?: { readonly offset: number; readonly end: number } | undefined } | undefined,
  message: string,
  suggestions: readonly string[] = [],
): Failed {
  const cst = node?.$cstNode;
  return { ok: false, id, message, suggestions, start: cst?.offset ?? 0, end: cst?.end ?? 0 };
}

/** Values by their text: the same few spacings and lengths are read again on every keystroke. */
const readBefore = new Map<string, Evaluated>();
const MOST_REMEMBERED = 4000;

/** The value of a written quantity; offsets of failures count from `base`. */
export function quantityValue(text: string, base: number): Evaluated {
  const known = readBefore.get(text);
  if (known) return known;
  const result = readQuantity(text, base);
  if (result.ok) {
    if (readBefore.size >= MOST_REMEMBERED) readBefore.clear();
    readBefore.set(text, result);
  }
  return result;
}

function readQuantity(text: string, base: number): Evaluated {
  const scanned = scanQuantity(text, 0);
  const broken = (message: string): Failed => ({
    ok: false,
    id: 'calculation',
    message,
    suggestions: [],
    start: base,
    end: base + text.length,
  });
  if (!scanned) return broken(`\`${text}\` is not a number.`);
  const parts: QuantityPart[] = [];
  for (const part of scanned.parts) {
    const ratio = parseRatio(part.number);
    if (ratio) return { ok: true, value: { si: toNumber(ratio), dimension: NONE, exact: ratio } };
    const number = parseNumber(part.number);
    if (!number) return broken(`\`${part.number}\` is not a number a spec can use.`);
    if (part.unit !== undefined && !unitOf(part.unit)) {
      const start = base + (part.unitStart ?? 0);
      return {
        ...unknownUnit(part.unit),
        start,
        end: start + part.unit.length,
      };
    }
    parts.push({ number, unit: part.unit ?? '' });
  }
  const result = toSi(parts);
  return result.ok ? { ok: true, value: result } : broken(`${sentence(result.reason)}.`);
}

export function unknownUnit(unit: string): Omit<Failed, keyof Span> {
  const suggestions = suggestUnits(unit);
  const meant =
    suggestions.length > 0 ? ` Did you mean ${suggestions.map((one) => `\`${one}\``).join(' or ')}?` : '';
  return { ok: false, id: 'unknown-unit', message: `\`${unit}\` is not a unit.${meant}`, suggestions };
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const operations = { '+': add, '-': subtract, '*': multiply, '/': divide } as const;

/** Works out an expression. `busy` holds the constants being worked out, to find circles. Never throws. */
export function evaluate(expression: Expression | undefined, busy: readonly Let[] = []): Evaluated {
  if (isQuantity(expression)) return quantityValue(expression.text, expression.$cstNode?.offset ?? 0);
  if (isArithmetic(expression)) {
    const left = evaluate(expression.left, busy);
    if (!left.ok) return left;
    const right = evaluate(expression.right, busy);
    if (!right.ok) return right;
    const result = operations[expression.operator](left.value, right.value);
    return result.ok
      ? { ok: true, value: result }
      : failed('calculation', expression, `${sentence(result.reason)}.`);
  }
  if (isName(expression)) {
    const target = expression.ref?.ref;
    const name = expression.ref?.$refText ?? '';
    if (!target) return failed('unknown-name', expression, `There is no value called \`${name}\`.`);
    if (!isLet(target))
      return failed('not-a-value', expression, `\`${name}\` is a ${target.kind}, not a value.`);
    if (busy.includes(target))
      return failed('circular', expression, `\`${name}\` is worked out from itself.`);
    const result = evaluate(target.value, [...busy, target]);
    return result.ok || result.id === 'circular'
      ? result.ok
        ? result
        : failed('circular', expression, result.message)
      : failed('incomplete', expression, `\`${name}\` has no value yet.`);
  }
  return failed('incomplete', expression, 'A value is missing here.');
}

/** A number written without a unit, slopes such as `1:4` apart. */
export function isBareNumber(expression: Expression): boolean {
  if (!isQuantity(expression) || expression.text.includes(':')) return false;
  return scanQuantity(expression.text, 0)?.parts.every(({ unit }) => unit === undefined) ?? false;
}

/**
 * The value of an expression taken as a kind. A bare number is no angle, though a slope is: `20` would
 * silently become a slope of twenty to one.
 */
export function fitKind(expression: Expression, value: Value, kind: KindName): ReturnType<typeof asKind> {
  if (kind === 'angle' && isBareNumber(expression)) {
    return { ok: false, reason: `expected ${kinds.angle.noun}, found a number without a unit` };
  }
  return asKind(value, kind);
}
