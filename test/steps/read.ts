/**
 * Reads a formula as it is shown and works it out from what stands beside it. The notation is that of a calculation
 * on paper: symbols with subscripts and primes, powers, roots, factors side by side, and clauses that say what a
 * symbol of the formula is: `q_p = (1 + 7 I_v) q_b, q_b = ½ ρ v²`. A division by factors side by side needs brackets:
 * of `a / b c` nobody knows which is meant. Numbers are SI; one with a unit has to be an input.
 */
import type { Step } from '@tautline/loads';
import { create, type MathNode, parseDependencies } from 'mathjs/number';

const { parse } = create({ ...parseDependencies });

const functions: Readonly<Record<string, (...values: number[]) => number>> = {
  min: Math.min,
  max: Math.max,
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  abs: Math.abs,
  floor: Math.floor,
  exp: Math.exp,
  ln: Math.log,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  atan: Math.atan,
};

/** What is left of nothing by rounding, SI. */
const rounding = 1e-12;

/** The formula cannot be read, or says something else than the step holds. */
export class Unreadable extends Error {}

/**
 * How far the step is from what its formula says, relative. What a formula speaks of are the inputs of the step, then
 * what stands above it in the same calculation. Throws Unreadable.
 */
export function missedBy(step: Step, above: readonly Step[]): number {
  const [main = '', ...where] = clauses(step.formula);
  const known = new Map<string, number>();
  for (const { inputs, symbol, value } of above) {
    for (const input of inputs) known.set(input.symbol, input.value);
    known.set(symbol, value);
  }
  const { left, right } = sides(main);
  const own = new Set(step.inputs.map(({ symbol }) => symbol));
  // A source may call it by a shorter name: `F = ...` of F_w. What is known by that name already is another thing.
  const named = left === undefined || left === step.symbol || (isSymbol(left) && !own.has(left));
  const solved = !named || holds(right, step.symbol);
  known.delete(step.symbol);
  for (const { symbol, value } of step.inputs) known.set(symbol, value);
  if (solved) known.set(step.symbol, step.value);
  for (const clause of where.reverse()) {
    const { left: name, right: says } = sides(clause);
    if (name === undefined || !isSymbol(name)) throw new Unreadable(`'${clause}' says nothing of a symbol`);
    known.set(name, worth(says, known));
  }
  if (solved && !holds(main, step.symbol)) throw new Unreadable(`it is not about ${step.symbol}`);
  const gives = worth(right, known);
  const is = solved ? worth(left ?? '', known) : step.value;
  if (!Number.isFinite(gives)) throw new Unreadable(`it gives ${gives}`);
  if (Math.abs(gives - is) < rounding) return 0;
  return Math.abs(gives - is) / Math.max(Math.abs(gives), Math.abs(is));
}

const isSymbol = (text: string): boolean =>
  /^[\p{L}\p{Nd}]+([_,'*⊥][\p{L}\p{Nd},'*⊥]*)*$|^(tan|cos|sin) \p{L}$|^2a$/u.test(text);

/** Parts between commas that stand outside brackets and are followed by a blank. */
function clauses(formula: string): string[] {
  const parts = [''];
  let depth = 0;
  for (let at = 0; at < formula.length; at++) {
    const here = formula.charAt(at);
    if (here === '(') depth += 1;
    if (here === ')') depth -= 1;
    if (here === ',' && depth === 0 && formula.charAt(at + 1) === ' ') parts.push('');
    else parts[parts.length - 1] += here;
  }
  return parts.map((part) => part.trim());
}

function sides(clause: string): { left?: string; right: string } {
  const [first = '', second, third] = clause.split(' = ');
  if (third !== undefined) throw new Unreadable(`two signs of equality in '${clause}'`);
  return second === undefined ? { right: first } : { left: first.trim(), right: second.trim() };
}

const escaped = (symbol: string): string => symbol.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
/** The symbol alone, not as a piece of another. */
const alone = (symbol: string): RegExp =>
  new RegExp(String.raw`(?<![\p{L}\p{Nd}_'])${escaped(symbol)}(?![\p{L}\p{Nd}_'*⊥]|,\S)`, 'gu');
const holds = (text: string, symbol: string): boolean => alone(symbol).test(text);

const besides = 'it divides by factors side by side without brackets';
const powers: Readonly<Record<string, string>> = { '²': '^2', '³': '^3', '⁴': '^4' };

function worth(text: string, known: ReadonlyMap<string, number>): number {
  const names = [...known.keys()].sort((a, b) => b.length - a.length);
  const scope: Record<string, number> = { pi: Math.PI };
  let plain = text;
  names.forEach((name, at) => {
    plain = plain.replaceAll(alone(name), `§${at}§`);
    scope[`s${at}`] = known.get(name) as number;
  });
  plain = plain
    .replaceAll(/§(\d+)§/g, 's$1')
    .replaceAll(/[²³⁴]/g, (sign) => powers[sign] as string)
    .replaceAll('½', '(1/2)')
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('π', 'pi')
    .replaceAll('√', 'sqrt')
    .replaceAll('∛', 'cbrt')
    .replaceAll('⌊', 'floor(')
    .replaceAll('⌋', ')')
    .replaceAll(/\|([^|]*)\|/g, 'abs($1)')
    .replaceAll(/\b(sqrt|cbrt|ln|sin|cos|tan) ?(s\d+|\d+(?:\.\d+)?)/g, '$1($2)')
    .replaceAll(/\b(ln|sin|cos|tan) \(/g, '$1(');
  // A symbol before a bracket is a factor, where the parser would read a function.
  if (/\/\s*(s\d+|pi)\s*\(/.test(plain)) throw new Unreadable(besides);
  plain = plain.replaceAll(/\b(s\d+|pi)\s*\(/g, '$1 * (');
  let node: MathNode;
  try {
    node = parse(plain);
  } catch {
    throw new Unreadable(`'${text}' cannot be read`);
  }
  return worked(node, scope, text);
}

/** The value of what was read; only what a formula may hold. */
function worked(node: MathNode, scope: Readonly<Record<string, number>>, text: string): number {
  const of = (inner: MathNode): number => worked(inner, scope, text);
  // The types of the library do not tell its nodes apart.
  const any = node as MathNode & {
    name: string;
    value: number;
    content: MathNode;
    fn: string & { name: string };
    args: MathNode[];
    implicit: boolean;
  };
  switch (node.type) {
    case 'ConstantNode':
      return any.value;
    case 'ParenthesisNode':
      return of(any.content);
    case 'SymbolNode': {
      const value = scope[any.name];
      if (value === undefined) throw new Unreadable(`nothing says what '${any.name}' is`);
      return value;
    }
    case 'FunctionNode': {
      const apply = functions[any.fn.name];
      if (apply === undefined) throw new Unreadable(`nothing says what '${any.fn.name}' is`);
      return apply(...any.args.map(of));
    }
    case 'OperatorNode': {
      const [a, b] = any.args as [MathNode, MathNode & { implicit?: boolean; fn?: string }];
      switch (String(any.fn)) {
        case 'add':
          return of(a) + of(b);
        case 'subtract':
          return of(a) - of(b);
        case 'multiply':
          return of(a) * of(b);
        case 'divide':
          if (b.implicit === true) throw new Unreadable(besides);
          return of(a) / of(b);
        case 'pow':
          return of(a) ** of(b);
        case 'unaryMinus':
          return -of(a);
      }
    }
  }
  throw new Unreadable(`'${node.toString()}' is no part of a formula`);
}
