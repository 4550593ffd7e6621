/** What exploring tells a person, and another program. */
import { cautionLine } from '@tautline/book';
import { format, type System, usedText } from '@tautline/quantity';
import type { Axis } from '@tautline/review';
import { moneyText } from '@tautline/takeoff';
import { type Choice, type Choices, valueText } from './choices.ts';

export interface Explored {
  readonly shelter: string;
  readonly file: string;
  readonly axes: readonly Axis[];
  readonly choices: Choices;
  /** How many there are in all, where it was stopped before the end. */
  readonly of: number;
  readonly heldFixed: readonly string[];
  /** m from the side. */
  readonly headroomAt: number;
}

export function exploredText(explored: Explored, system: System): string {
  const { axes, choices, of, headroomAt } = explored;
  const at = format(headroomAt, 'length', system);
  const gusts = choices.all.some(({ figures }) => figures.firstFailure !== undefined);
  const head = [
    '',
    ...axes.map(({ label }) => label),
    'verdict',
    'most used',
    ...(gusts ? ['first failure'] : []),
    `headroom at ${at}`,
    'cost',
  ];
  const rows = choices.all.map((choice) => rowOf(choice, choices.front.includes(choice), gusts, system));
  const best = choices.front.map(({ number }) => number).join(', ');
  return [
    `Variants of ${explored.shelter}  (${explored.file})`,
    ...(choices.all.length < of ? [`Stopped: ${choices.all.length} of ${of} were worked out.`] : []),
    '',
    ...table([head, ...rows]),
    '',
    choices.front.length === 0
      ? nothingBest(choices)
      : `* Nothing fails, and no other such variant is at least as good in all of ${choices.aims.join(', ')}: ${best}.`,
    ...(choices.unpriced.length === 0
      ? []
      : [
          `No price, which others do not need or have: ${choices.lacking.join('; ')}. Not compared: ${choices.unpriced.map(({ number }) => number).join(', ')}.`,
        ]),
    'Held fixed:',
    ...explored.heldFixed.map((line) => `  ${line}`),
    cautionLine,
    '',
  ].join('\n');
}

function nothingBest({ all }: Choices): string {
  const holding = all.some(({ figures }) => figures.errors === 0 && figures.problem === undefined);
  return holding
    ? 'No variant in which nothing fails has all the figures to compare.'
    : 'Something fails in every variant.';
}

function rowOf({ number, values, figures }: Choice, best: boolean, gusts: boolean, system: System): string[] {
  const { problem, errors, warnings, governing, firstFailure, headroom, cost } = figures;
  const verdict =
    problem !== undefined
      ? `cannot be built as said: ${problem}`
      : errors > 0
        ? `${errors} ${errors === 1 ? 'fails' : 'fail'}`
        : warnings > 0
          ? `holds, ${warnings} to watch`
          : 'holds';
  return [
    `${best ? '*' : ' '}${number}`,
    ...values.map((value) => valueText(value, system)),
    verdict,
    governing === undefined ? '' : `${usedText(governing.utilisation)} ${governing.id}`,
    ...(gusts
      ? [
          firstFailure === undefined
            ? ''
            : `${firstFailure.beyond ? 'over ' : ''}${format(firstFailure.gust, 'speed', system)} ${firstFailure.part}`.trim(),
        ]
      : []),
    headroom === undefined ? '' : format(headroom, 'length', system),
    cost === undefined ? '' : `${moneyText(cost.total, cost.currency)}${cost.complete ? '' : ' so far'}`,
  ];
}

/** Columns as wide as their widest cell. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  );
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

export function exploredJson({ shelter, file, axes, choices, of, heldFixed, headroomAt }: Explored): string {
  const best = new Set(choices.front);
  const plain = {
    shelter,
    file,
    axes: axes.map(({ label, kind }) => ({ label, kind })),
    aims: choices.aims,
    variants: choices.all.map((choice) => ({
      number: choice.number,
      values: choice.values.map((value) =>
        value.type === 'quantity' ? value.si : value.type === 'item' ? value.id : '',
      ),
      front: best.has(choice),
      ...choice.figures,
    })),
    stopped: choices.all.length < of,
    heldFixed,
    headroomAt,
  };
  return `${JSON.stringify(plain, rounded, 2)}\n`;
}

function rounded(_key: string, value: unknown): unknown {
  return typeof value === 'number' ? Number(value.toPrecision(6)) : value;
}
