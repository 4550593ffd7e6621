/** Price lists kept in a spreadsheet. */
import { asKind, parseQuantity } from '@tautline/quantity';
import { originOf, type PricePoint } from '@tautline/shelter';
import Papa from 'papaparse';
import type { PriceList } from './prices.ts';

export interface PriceCsv {
  readonly prices: PriceList;
  /** What could not be read, each with its line in the file, from 1. */
  readonly problems: readonly { readonly line: number; readonly message: string }[];
}

const columns = ['item', 'price', 'per'] as const;
const wholes = new Set(['piece', 'roll', 'bag', 'can']);

/**
 * Prices by item from comma-separated text (RFC 4180) with a header row that names the columns `item`,
 * `price` and `per`, in any order; other columns are passed over. `per` is said as in a spec: `20 ft`,
 * `100 m2`, `yd3`, `piece`. Prices are plain numbers with a point. A row that cannot be read is a problem
 * and no price; nothing is thrown. `name` is the file's name, for the origin of each price.
 */
export function pricesFromCsv(text: string, name: string): PriceCsv {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  const problems: { line: number; message: string }[] = errors
    .filter((error) => error.code !== 'UndetectableDelimiter')
    .map((error) => ({ line: (error.row ?? 0) + 1, message: error.message }));
  const header = (data[0] ?? []).map((cell) => cell.trim().toLowerCase());
  const at = columns.map((column) => header.indexOf(column));
  const lacking = columns.filter((_, index) => at[index] === -1);
  if (lacking.length > 0) {
    const message = `The first row must name the columns item, price and per; it lacks ${lacking.join(' and ')}.`;
    return { prices: new Map(), problems: [{ line: 1, message }, ...problems] };
  }
  const prices = new Map<string, PricePoint[]>();
  data.forEach((row, index) => {
    if (index === 0 || row.every((cell) => cell.trim() === '')) return;
    const line = index + 1;
    const [item = '', price = '', per = ''] = at.map((column) => (row[column] ?? '').trim());
    const read = readRow(item, price, per);
    if (typeof read === 'string') problems.push({ line, message: read });
    else prices.set(item, [...(prices.get(item) ?? []), { ...read, origin: originOf(`${name}#${line}`) }]);
  });
  return { prices, problems };
}

function readRow(item: string, price: string, per: string): Omit<PricePoint, 'origin'> | string {
  if (item === '') return 'There is no item in this row.';
  if (!/^\d+(\.\d+)?$/.test(price)) {
    return `The price of ${item} must be a plain number such as 4.20; it is '${price}'.`;
  }
  const amount = Number(price);
  if (per === 'pack') return { amount, per: { unit: 'pack', value: 1 } };
  if (wholes.has(per)) return { amount, per: { unit: 'piece', value: 1 } };
  const quantity = parseQuantity(/^\d/.test(per) ? per : `1 ${per}`);
  if (per === '' || !quantity.ok) {
    return `Say what the price of ${item} is per: a length, an area, a volume, or piece, pack, roll, bag or can; not '${per}'.`;
  }
  for (const unit of ['length', 'area', 'volume'] as const) {
    const fitted = asKind(quantity, unit);
    if (fitted.ok && fitted.si > 0) return { amount, per: { unit, value: fitted.si } };
  }
  return `The price of ${item} is per '${per}', which is no length, area, volume or piece.`;
}
