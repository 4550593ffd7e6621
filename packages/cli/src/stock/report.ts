/** The pooled list as a document, and for another program. */
import { cautionLine } from '@tautline/book';
import { format, type System } from '@tautline/quantity';
import {
  buyText,
  cutText,
  handText,
  type Left,
  type MaterialLine,
  materialsPlain,
  moneyText,
} from '@tautline/takeoff';
import type { Document, Part } from '../report/document.ts';
import { costLines, cutLines } from '../report/materials-text.ts';
import type { Pooled } from './pooled.ts';

/** `wide` sets the items out as a table; a terminal has no room for it. */
export function stockDocument(pooled: Pooled, system: System, wide: boolean): Document {
  const { counted, leftOut, materials, priceLists } = pooled;
  const money = (amount: number): string => moneyText(amount, materials.currency);
  const ends = pooled.left.filter(({ offcuts }) => offcuts.length > 0);
  return {
    title: `What ${counted.length === 1 ? 'one shelter takes' : `${counted.length} shelters take together`}`,
    parts: [
      `Counted: ${counted.join(', ')}.`,
      ...leftOut.map(({ name, file, why }) => `Left out: ${name} (${file}), ${why}.`),
      wide ? tableOf(pooled, system, money) : { lines: linesOf(pooled, system, money) },
      ...unsaidLengths(pooled),
      { heading: 'Cutting' },
      { lines: materials.cutList.flatMap((list) => cutLines(list, system)).map((line) => line.slice(2)) },
      ...(ends.length === 0
        ? []
        : [
            { heading: 'Ends worth keeping' },
            { lines: ends.map(({ item, offcuts }) => `${item}: ${lengths(offcuts, system)}`) },
          ]),
      { heading: 'Cost' },
      ...costLines(materials, system, money, priceLists),
      ...materials.gaps.map(({ what }) => `Not counted: ${what}`),
      cautionLine,
    ],
  };
}

/** One line of the list, each cell in words; empty where there is nothing to say. */
interface Told {
  readonly item: string;
  readonly what: string;
  readonly needed: string;
  readonly onHand: string;
  readonly taken: string;
  readonly buy: string;
  readonly cost: string;
  readonly left: string;
}

function toldOf(
  { materials, have, left }: Pooled,
  system: System,
  money: (amount: number) => string,
): Told[] {
  const onHand = (item: string): string =>
    have
      .filter((one) => one.item === item)
      .map(({ count, length }) =>
        length === undefined ? `${count}` : `${count} x ${cutText(length, system)}`,
      )
      .join('; ');
  const rest = (item: string): string =>
    leftText(
      left.find((one) => one.item === item),
      system,
    );
  const met = new Set<string>();
  const needed = materials.lines.map((line): Told => {
    const id = line.item?.id;
    // An item bought in two widths has one stock on hand.
    const first = id !== undefined && !met.has(id);
    if (id !== undefined) met.add(id);
    const cost = line.cost === undefined ? 'no price' : money(line.cost);
    return {
      item: id ?? '',
      what: line.title,
      needed: format(line.total, line.kind, system),
      onHand: first ? onHand(id) : '',
      taken: handText(line, system),
      buy:
        buyText(line, system) ||
        (line.buy === undefined ? buyAsIs(line, system) : line.buy === 0 ? 'nothing' : `${line.buy}`),
      cost,
      left: first ? rest(id) : '',
    };
  });
  const idle = left
    .filter(({ item }) => !met.has(item))
    .map(({ item }): Told => {
      const nothing = { needed: '', taken: '', buy: '', cost: '' };
      return { item, what: 'needed by none of them', ...nothing, onHand: onHand(item), left: rest(item) };
    });
  return [...needed, ...idle];
}

/** What is sold neither in lengths nor by the piece is bought as it is measured, such as concrete. */
function buyAsIs(line: MaterialLine, system: System): string {
  return line.kind === 'count' || line.cuts ? 'nothing' : format(line.total, line.kind, system);
}

function tableOf(pooled: Pooled, system: System, money: (amount: number) => string): Part {
  const rows = toldOf(pooled, system, money);
  return {
    head: ['item', 'what', 'needed', 'on hand', 'taken', 'buy', 'cost', 'left on hand'],
    rows: rows.map((row) => [
      row.item,
      row.what,
      row.needed,
      row.onHand,
      row.taken,
      row.buy,
      row.cost,
      row.onHand === '' ? '' : row.left || 'nothing',
    ]),
  };
}

function linesOf(pooled: Pooled, system: System, money: (amount: number) => string): string[] {
  return toldOf(pooled, system, money).flatMap(({ item, what, needed, onHand, taken, buy, cost, left }) => [
    [`${item === '' ? '' : `${item}  `}${what}${needed === '' ? '' : `: ${needed}`}`, cost]
      .filter(Boolean)
      .join('  '),
    ...(onHand === ''
      ? []
      : [`    on hand ${onHand}; taken ${taken || 'nothing'}; left ${left || 'nothing'}`]),
    ...(buy === '' ? [] : [`    buy ${buy}`]),
  ]);
}

const lengths = (all: Left['offcuts'], system: System): string =>
  all.map(({ length, count }) => `${count} x ${cutText(length, system)}`).join('; ');

function leftText(left: Left | undefined, system: System): string {
  if (left === undefined) return '';
  return [lengths(left.untouched, system), left.pieces > 0 ? `${left.pieces}` : '']
    .filter((text) => text !== '')
    .join('; ');
}

function unsaidLengths({ left }: Pooled): string[] {
  return left
    .filter(({ unsaidLength }) => unsaidLength > 0)
    .map(
      ({ item, unsaidLength }) =>
        `${unsaidLength} of ${item} on hand are said without a length, and nothing was cut from them: say \`have ${unsaidLength} of ${item} at 20 ft\` with the length they have.`,
    );
}

export function stockJson({ counted, leftOut, materials, have, left }: Pooled): string {
  const plain = {
    counted,
    leftOut,
    onHand: have.map(({ item, count, length }) => ({ item, count, length: length ?? null })),
    left,
    materials: materialsPlain(materials),
  };
  return `${JSON.stringify(plain, null, 2)}\n`;
}
