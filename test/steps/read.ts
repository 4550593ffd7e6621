/**
 * Reads a formula as it is shown and works it out from what stands beside it. The notation is that of a calculation
 * on paper: symbols with subscripts and primes, powers, roots, factors side by side, and clauses that say what a
 * symbol of the formula is: `q_p = (1 + 7 I_v) q_b, q_b = ½ ρ v²`. A division by factors side by side needs brackets:
 * of `a / b c` nobody knows which is meant. Numbers are SI; one with a unit has to be an input.
 */
import type { Step } from '@tautline/loads';

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
  const solved = left !== undefined && (!named || holds(right, step.symbol));
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

/** The text with each known symbol as its place in a list, and signs of paper as those of a reader. */
function worth(text: string, known: ReadonlyMap<string, number>): number {
  const names = [...known.keys()].sort((a, b) => b.length - a.length);
  let plain = text;
  for (const [at, name] of names.entries()) plain = plain.replaceAll(alone(name), `§${at}§`);
  const value = (at: string): number => known.get(names[Number(at)] as string) as number;
  plain = plain
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll('⁴', '^4')
    .replaceAll('½', '(1/2)')
    .replaceAll('−', '-')
    .replaceAll('√', ' sqrt ')
    .replaceAll('∛', ' cbrt ')
    .replaceAll('⌊', ' floor (')
    .replaceAll('⌋', ')')
    .replaceAll(/\|([^|]*)\|/g, ' abs ($1)');
  return new Reader(plain, value).whole();
}

const token =
  /\s*(?:§(?<known>\d+)§|(?<number>\d+(?:\.\d+)?(?:e-?\d+)?)|(?<word>[\p{L}][\p{L}\p{Nd}_',]*)|(?<sign>[-+*·/^(),]))/uy;

interface Token {
  readonly sign: string;
  readonly value?: number;
  readonly word?: string;
}

/** Sums of products of powers. Factors side by side bind like a product, and may not follow a division. */
class Reader {
  private readonly tokens: Token[] = [];
  private at = 0;

  constructor(
    private readonly text: string,
    value: (place: string) => number,
  ) {
    token.lastIndex = 0;
    const end = text.trimEnd().length;
    while (token.lastIndex < end) {
      const from = token.lastIndex;
      const groups = token.exec(text)?.groups;
      if (groups === undefined) throw new Unreadable(`'${text.slice(from)}' cannot be read`);
      const { known, number, word, sign } = groups;
      if (known !== undefined) this.tokens.push({ sign: '', value: value(known) });
      else if (number !== undefined) this.tokens.push({ sign: '1', value: Number(number) });
      else if (word === 'π') this.tokens.push({ sign: '1', value: Math.PI });
      else if (word !== undefined) this.tokens.push({ sign: '', word });
      else this.tokens.push({ sign: sign as string });
    }
  }

  whole(): number {
    const value = this.sum();
    if (this.at < this.tokens.length) throw new Unreadable(`'${this.text}' cannot be read to its end`);
    return value;
  }

  private get next(): Token | undefined {
    return this.tokens[this.at];
  }

  private take(...signs: string[]): string | undefined {
    const sign = this.next?.sign;
    if (sign === undefined || sign === '' || !signs.includes(sign)) return undefined;
    this.at += 1;
    return sign;
  }

  private sum(): number {
    let value = this.take('-') ? -this.product() : this.product();
    for (;;) {
      if (this.take('+')) value += this.product();
      else if (this.take('-')) value -= this.product();
      else return value;
    }
  }

  private product(): number {
    let pure = this.next?.sign === '1';
    let value = this.power();
    let divided = false;
    for (;;) {
      if (this.take('·', '*')) {
        value *= this.power();
        divided = false;
      } else if (this.take('/')) {
        // Of two numbers it is a fraction, which may stand before a factor: `8/9 M`.
        divided = !(pure && this.next?.sign === '1');
        value /= this.power();
      } else if (this.next !== undefined && ['', '1', '('].includes(this.next.sign)) {
        if (divided) throw new Unreadable(besides);
        pure = false;
        value *= this.power();
      } else return value;
    }
  }

  private power(): number {
    const base = this.single();
    return this.take('^') ? base ** (this.take('-') ? -this.single() : this.single()) : base;
  }

  private single(): number {
    const here = this.next;
    if (here === undefined) throw new Unreadable(`'${this.text}' breaks off`);
    if (this.take('(')) return this.closed()[0] as number;
    this.at += 1;
    if (here.value !== undefined) return here.value;
    if (here.word === undefined) throw new Unreadable(`'${here.sign}' is out of place in '${this.text}'`);
    const apply = functions[here.word];
    if (apply === undefined) throw new Unreadable(`nothing says what '${here.word}' is`);
    return apply(...(this.take('(') ? this.closed() : [this.single()]));
  }

  /** What stands up to the bracket that closes, between commas. */
  private closed(): number[] {
    const values = [this.sum()];
    while (this.take(',')) values.push(this.sum());
    if (!this.take(')')) throw new Unreadable(`a bracket stays open in '${this.text}'`);
    return values;
  }
}
