/** The pooled list as a document, and for another program. */
import { cautionLine } from '@tautline/book';
import { format, type System } from '@tautline/quantity';
import {
  buyText,
  cutText,
  handText,
  type Left,
  materialsPlain,
  moneyText,
  priceKey,
} from '@tautline/takeoff';
import type { Document } from '../report/document.ts';
import { costLines, cutLines } from '../report/materials-text.ts';
import type { Pooled } from './pooled.ts';

export function stockDocument(pooled: Pooled, system: System): Document {
  const { counted, leftOut, materials, priceLists } = pooled;
  const money = (amount: number): string => moneyText(amount, materials.currency);
  const head = ['item', 'what', 'needed', 'on hand', 'taken from it', 'buy', 'cost', 'left'];
  const ends = pooled.left.filter(({ offcuts }) => offcuts.length > 0);
  return {
    title: `What ${counted.length === 1 ? 'one shelter takes' : `${counted.length} shelters take together`}`,
    parts: [
      `Counted: ${counted.join(', ')}.`,
      ...leftOut.map(({ name, file, why }) => `Left out: ${name} (${file}), ${why}.`),
      { head, rows: rowsOf(pooled, system, money) },
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

function rowsOf(
  { materials, have, left }: Pooled,
  system: System,
  money: (amount: number) => string,
): string[][] {
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
  const told = new Set<string>();
  const needed = materials.lines.map((line) => {
    const item = line.item?.id;
    // An item bought in two widths has one stock on hand.
    const first = item !== undefined && !told.has(item);
    if (item !== undefined) told.add(item);
    const bought = line.kind === 'count' ? `${line.total - (line.fromHand ?? 0)}` : buyText(line, system);
    return [
      priceKey(line),
      line.title,
      format(line.total, line.kind, system),
      first ? onHand(item) : '',
      handText(line, system),
      bought === '0' || bought === '' ? (line.cuts ? 'nothing' : bought) : bought,
      line.cost === undefined ? 'no price' : money(line.cost),
      first ? rest(item) : '',
    ];
  });
  const idle = left
    .filter(({ item }) => !told.has(item))
    .map(({ item }) => [item, 'not needed', '', onHand(item), '', '', '', rest(item)]);
  return [...needed, ...idle];
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
