/** The shopping list: takeoff, cut lists and cost together. */
import type { Item, Shelter } from '@tautline/shelter';
import { cutStock, type ExactOptions, type LoadMipSolver } from './cutting/exact.ts';
import type { CutPlan, CutRequest, Demand } from './cutting/problem.ts';
import { cutStockQuick } from './cutting/quick.ts';
import { boughtTogether, type Gap, type Takeoff, type TakeoffLine } from './line.ts';
import { lineCost, type PriceList, pricesOf, stockPrice, wholePacks } from './prices.ts';
import { takeoff } from './takeoff.ts';

export interface MaterialOptions {
  readonly prices?: PriceList;
  /** Lengths the grower already has, by item id. */
  readonly onHand?: ReadonlyMap<string, readonly Demand[]>;
  /** Things counted in pieces that the grower already has, by item id. */
  readonly piecesOnHand?: ReadonlyMap<string, number>;
  /** ISO 4217 code the prices are in. */
  readonly currency?: string;
  /** Width of a saw cut through pipe and timber, m: 3 mm unless said (common practice, no source). */
  readonly kerf?: number;
  /** Time over which everything without a life of its own is spread, s; without it only renewals count. */
  readonly frameLife?: number;
}

export interface MaterialLine extends TakeoffLine {
  readonly cuts?: CutPlan;
  /** What a cut through it takes away, m; present where `cuts` is. */
  readonly kerf?: number;
  /** How many pieces or packs of a line are on hand and not bought. */
  readonly fromHand?: number;
  /** How many pieces or whole packs are to buy, of what is bought so. */
  readonly buy?: number;
  /** Undefined when a price is missing. */
  readonly cost?: number;
}

export interface Cost {
  /** Sum of all lines with a price. */
  readonly total: number;
  /** False when a line has no price, a piece no bar, or something could not be counted. */
  readonly complete: boolean;
  /** Ground under cover, m2, and the total for each of them. */
  readonly protectedArea: number;
  readonly perArea: number;
  /** Renewing films, meshes and sheets over their life, each year. */
  readonly renewalsPerYear: number;
  /** Renewals and everything else spread over `frameLife`; absent when that is not given. */
  readonly perYear?: number;
  /** Lines with a price, the dearest first, and the share of each in the total, 0 to 1. */
  readonly shares: readonly { readonly title: string; readonly cost: number; readonly share: number }[];
  /** Titles of lines without a price. */
  readonly missing: readonly string[];
  /** Titles of lines with a piece that no length sold can give. */
  readonly tooLong: readonly string[];
}

export interface Materials {
  readonly lines: readonly MaterialLine[];
  /** What to cut from what, for every item that is sold in lengths. */
  readonly cutList: readonly { readonly item: Item; readonly width?: number; readonly plan: CutPlan }[];
  readonly cost: Cost;
  /** ISO 4217 code of all sums; absent when the project names none. */
  readonly currency?: string;
  readonly gaps: readonly Gap[];
}

/** Width a saw takes, m: common practice, no source. */
const KERF = 0.003;
/** Plans count in tenths of a millimetre, m. */
const SAME_BAR = 2e-4;
/** Julian year, s. */
const YEAR = 365.25 * 86_400;

/** The cutting question of a line; undefined when its item is not sold in lengths. */
export function cutRequestOf(line: TakeoffLine, options: MaterialOptions = {}): CutRequest | undefined {
  if (!line.item || !line.pieces || !line.stock || line.stock.length === 0) return undefined;
  const points = pricesOf(line, options.prices);
  const onHand = options.onHand?.get(line.item.id);
  return {
    demand: line.pieces.map(({ length, count }) => ({ length, count })),
    stock: line.stock.map((length) => {
      const price = stockPrice(points, length, line.width);
      return price === undefined ? { length } : { length, price };
    }),
    kerf: kerfOf(line, options),
    ...(onHand ? { onHand } : {}),
  };
}

/** A knife through film or a pair of shears through a strap takes nothing away. */
function kerfOf(line: TakeoffLine, options: MaterialOptions): number {
  const sawn =
    !['covering', 'fastening'].includes(line.group) ||
    line.item?.kind === 'sheet' ||
    (line.item?.kind === 'fastening' && (line.item.form === 'board' || line.item.form === 'channel'));
  return sawn ? (options.kerf ?? KERF) : 0;
}

/** At once, with quick cut lists: for the live editor. Throws RangeError for a negative kerf or life. */
export const materials = (shelter: Shelter, options: MaterialOptions = {}): Materials =>
  materialsOf(takeoff(shelter), groundOf(shelter), options);

/** The same for anything that was taken off: `ground` is what it keeps the rain off, m2. */
export function materialsOf(
  { lines, gaps }: Takeoff,
  ground: number,
  options: MaterialOptions = {},
): Materials {
  const all = boughtTogether(lines);
  const plans = new Map<TakeoffLine, CutPlan>();
  let left = options;
  for (const line of all) {
    const request = cutRequestOf(line, left);
    if (!request) continue;
    const plan = cutStockQuick(request);
    plans.set(line, plan);
    left = without(left, line, plan);
  }
  return together(ground, all, plans, gaps, options);
}

/** The same with least-cost cut lists, proven where the plan says so. Rejects when the solver cannot be loaded. */
export function materialsExact(
  shelter: Shelter,
  load: LoadMipSolver,
  options: MaterialOptions & ExactOptions = {},
): Promise<Materials> {
  return materialsExactOf(takeoff(shelter), groundOf(shelter), load, options);
}

/** Ground under cover, m2. */
export const groundOf = (shelter: Shelter): number => shelter.width * shelter.length;

/** As `materialsOf`, with least-cost cut lists. */
export async function materialsExactOf(
  { lines, gaps }: Takeoff,
  ground: number,
  load: LoadMipSolver,
  options: MaterialOptions & ExactOptions = {},
): Promise<Materials> {
  const all = boughtTogether(lines);
  const plans = new Map<TakeoffLine, CutPlan>();
  let left = options;
  for (const line of all) {
    const request = cutRequestOf(line, left);
    if (!request) continue;
    const plan = await cutStock(request, load, options);
    plans.set(line, plan);
    left = without(left, line, plan);
  }
  return together(ground, all, plans, gaps, options);
}

/** What is on hand once a plan has taken its bars: rolls of two widths are not cut from the same one. */
function without(options: MaterialOptions, { item }: TakeoffLine, plan: CutPlan): MaterialOptions {
  const before = item && options.onHand?.get(item.id);
  if (!before) return options;
  const left = before.map(({ length, count }) => ({ length, count }));
  for (const bar of plan.bars.filter(({ onHand }) => onHand)) {
    let taken = bar.count;
    for (const one of left.filter(({ length }) => Math.abs(length - bar.length) < SAME_BAR)) {
      const here = Math.min(taken, one.count);
      one.count -= here;
      taken -= here;
    }
  }
  return { ...options, onHand: new Map(options.onHand).set(item.id, left) };
}

function together(
  ground: number,
  lines: readonly TakeoffLine[],
  plans: ReadonlyMap<TakeoffLine, CutPlan>,
  gaps: readonly Gap[],
  options: MaterialOptions,
): Materials {
  const priced = lines.map((line): MaterialLine => {
    const cuts = plans.get(line);
    const needed = neededOf(line);
    const fromHand = Math.min(needed ?? 0, (line.item && options.piecesOnHand?.get(line.item.id)) ?? 0);
    const rest = Math.max(0, line.total - fromHand * (line.pack ?? 1));
    const cost = rest === 0 ? 0 : lineCost({ ...line, total: rest }, pricesOf(line, options.prices), cuts);
    return {
      ...line,
      ...(cuts ? { cuts, kerf: kerfOf(line, options) } : {}),
      ...(fromHand > 0 ? { fromHand } : {}),
      ...(needed === undefined ? {} : { buy: needed - fromHand }),
      ...(cost === undefined ? {} : { cost }),
    };
  });
  const cutList = priced.flatMap(({ item, cuts, width }) =>
    item && cuts ? [{ item, plan: cuts, ...(width === undefined ? {} : { width }) }] : [],
  );
  return {
    lines: priced,
    cutList,
    cost: costOf(ground, priced, gaps, options),
    ...(options.currency === undefined ? {} : { currency: options.currency }),
    gaps,
  };
}

/** Pieces or whole packs of what is counted or sold so; nothing of what is tied. */
function neededOf(line: TakeoffLine): number | undefined {
  if (line.tied) return 0;
  if (line.pack !== undefined) return wholePacks(line.total, line.pack);
  return line.kind === 'count' ? line.total : undefined;
}

function costOf(
  protectedArea: number,
  lines: readonly MaterialLine[],
  gaps: readonly Gap[],
  options: MaterialOptions,
): Cost {
  const { frameLife } = options;
  if (frameLife !== undefined && !(frameLife > 0)) throw new RangeError(`${frameLife} is no life`);
  let total = 0;
  let renewalsPerYear = 0;
  let lasting = 0;
  for (const { cost, life } of lines) {
    if (cost === undefined) continue;
    total += cost;
    if (life !== undefined && life > 0) renewalsPerYear += (cost * YEAR) / life;
    else lasting += cost;
  }
  const uncut = (line: MaterialLine): boolean => (line.cuts?.impossible.length ?? 0) > 0;
  const tooLong = lines.filter(uncut).map((line) => line.title);
  const missing = lines.filter((line) => line.cost === undefined && !uncut(line)).map((line) => line.title);
  return {
    total,
    complete: missing.length + tooLong.length + gaps.length === 0,
    protectedArea,
    perArea: protectedArea > 0 ? total / protectedArea : 0,
    renewalsPerYear,
    ...(frameLife === undefined ? {} : { perYear: renewalsPerYear + (lasting * YEAR) / frameLife }),
    shares: lines
      .flatMap(({ title, cost }) =>
        cost === undefined || cost === 0 ? [] : [{ title, cost, share: cost / total }],
      )
      .sort((a, b) => b.cost - a.cost || a.title.localeCompare(b.title)),
    missing,
    tooLong,
  };
}
