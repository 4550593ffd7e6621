/** The material list and the cut list as a workbook (Office Open XML), by the library write-excel-file. */
import { format, type System } from '@tautline/quantity';
import { cutText, type Materials, materialsTable } from '@tautline/takeoff';
import { unzipSync, zipSync } from 'fflate';
import writeWorkbook, { type SheetData } from 'write-excel-file/universal';

const bold = (value: string) => ({ value, fontWeight: 'bold' as const });

/**
 * Bytes of a workbook with the sheets `Materials`, `Cutting` and `Cost`. Texts are cells of text, never
 * formulas, whatever they begin with. Same list, same bytes.
 */
export async function materialsWorkbook(materials: Materials, system: System): Promise<Uint8Array> {
  const { header, rows } = materialsTable(materials, system);
  const list: SheetData = [header.map(bold), ...rows.map((row) => row.map(cell))];
  const wide = [12, 20, 44, 12, 12, 6, 34, 10, 9, 24, 70];
  const blob = await writeWorkbook([
    { data: list, sheet: 'Materials', columns: wide.map((width) => ({ width })), stickyRowsCount: 1 },
    {
      data: cutting(materials, system),
      sheet: 'Cutting',
      columns: [44, 10, 14, 12, 60, 14].map((width) => ({ width })),
      stickyRowsCount: 1,
    },
    { data: costs(materials, system), sheet: 'Cost', columns: [{ width: 44 }, { width: 14 }, { width: 14 }] },
  ]).toBlob();
  // The library stamps the parts with the hour of writing; the first day that a zip file knows repeats.
  const parts = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  return zipSync(parts, { mtime: new Date(1980, 0, 1) });
}

const cell = (value: string | number) =>
  typeof value === 'number' ? { value, type: Number } : { value, type: String };

function cutting({ cutList }: Materials, system: System): SheetData {
  const header = ['item', 'bars', 'length', 'on hand', 'pieces of one bar', 'left over'].map(bold);
  const rows = cutList.flatMap(({ item, plan }) =>
    plan.bars.map((bar) =>
      [
        item.title,
        bar.count,
        cutText(bar.length, system),
        bar.onHand ? 'yes' : 'no',
        bar.cuts.map((cut) => cutText(cut, system)).join(' + '),
        cutText(bar.offcut, system),
      ].map(cell),
    ),
  );
  return [header, ...rows];
}

function costs({ cost, currency }: Materials, system: System): SheetData {
  const money = (value: number) => Math.round(value * 1e4) / 1e4;
  const rows: (readonly (string | number)[])[] = [
    [cost.complete ? 'all together' : 'so far', money(cost.total), currency ?? ''],
    ['ground under cover', format(cost.protectedArea, 'area', system), ''],
    ['for each square metre of it', money(cost.perArea), currency ?? ''],
    ['renewals in a year', money(cost.renewalsPerYear), currency ?? ''],
    ...cost.shares.map((one) => [one.title, money(one.cost), currency ?? '']),
    ...cost.missing.map((title) => [title, 'no price', '']),
    ...cost.tooLong.map((title) => [title, 'longer than any sold', '']),
  ];
  return [['what', 'value', 'currency'].map(bold), ...rows.map((row) => row.map(cell))];
}
