/** What exploring tells: a table as plain text, as Markdown, and for another program. */
import { format, type System, usedText } from '@tautline/quantity';
import { moneyText } from '@tautline/takeoff';
import type { Axis } from '../vary/axes.ts';
import { type Choice, type Choices, valueText } from '../vary/choices.ts';
import { columns } from './columns.ts';
import { markdownRow, markdownText } from './markdown-text.ts';

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

/** `caution` is the line that every report carries. */
export function exploredText(explored: Explored, system: System, caution: string): string {
  return [
    `Variants of ${explored.shelter}  (${explored.file})`,
    ...stoppedAt(explored),
    '',
    ...columns(rowsOf(explored, system)),
    '',
    ...conclusions(explored.choices),
    'Held fixed:',
    ...explored.heldFixed.map((line) => `  ${line}`),
    caution,
    '',
  ].join('\n');
}

/** A page of Markdown with the same words. */
export function exploredMarkdown(explored: Explored, system: System, caution: string): string {
  const [head = [], ...rows] = rowsOf(explored, system);
  const row = (cells: readonly string[]): string =>
    markdownRow(cells.map((cell) => markdownText(cell.trim())));
  return `${[
    `# Variants of ${markdownText(explored.shelter)}`,
    '',
    ...stoppedAt(explored).flatMap((line) => [markdownText(line), '']),
    row(['number', ...head.slice(1)]),
    row(head.map(() => '---')).replaceAll('&#45;', '-'),
    ...rows.map(row),
    '',
    ...conclusions(explored.choices).flatMap((line) => [markdownText(line), '']),
    'Held fixed:',
    '',
    ...explored.heldFixed.map((line) => `- ${markdownText(line)}`),
    '',
    `*${markdownText(caution)}*`,
  ].join('\n')}\n`;
}

/** Empty where nothing was left out. */
export const stoppedAt = ({ choices, of }: Explored): string[] =>
  choices.all.length < of ? [`Stopped: ${choices.all.length} of ${of} were worked out.`] : [];

/** Head and one row a variant; the first cell of the head is empty. */
export function rowsOf({ axes, choices, headroomAt }: Explored, system: System): string[][] {
  const gusts = choices.all.some(({ figures }) => figures.firstFailure !== undefined);
  const head = [
    '',
    ...axes.map(({ label }) => label),
    'verdict',
    'most used',
    ...(gusts ? ['first failure'] : []),
    `headroom at ${format(headroomAt, 'length', system)}`,
    'cost',
  ];
  return [
    head,
    ...choices.all.map((choice) => {
      const told = tellChoice(choice, system);
      return [
        `${choices.front.includes(choice) ? '*' : ' '}${choice.number}`,
        ...told.values,
        told.verdict,
        told.used,
        ...(gusts ? [told.gust] : []),
        told.headroom,
        told.cost,
      ];
    }),
  ];
}

/** What the table comes to, in sentences. */
export function conclusions(choices: Choices): string[] {
  const best = choices.front.map(({ number }) => number).join(', ');
  return [
    choices.front.length === 0
      ? nothingBest(choices)
      : `* Nothing fails, and no other such variant is at least as good in all of ${choices.aims.join(', ')}: ${best}.`,
    ...(choices.unpriced.length === 0
      ? []
      : [
          `No price, which others do not need or have: ${choices.lacking.join('; ')}. Not compared: ${choices.unpriced.map(({ number }) => number).join(', ')}.`,
        ]),
  ];
}

function nothingBest({ all }: Choices): string {
  const holding = all.some(({ figures }) => figures.errors === 0 && figures.problem === undefined);
  return holding
    ? 'No variant in which nothing fails has all the figures to compare.'
    : 'Something fails in every variant.';
}

/** A variant in words; empty where there is nothing to say. */
export interface ToldChoice {
  readonly values: readonly string[];
  readonly verdict: string;
  readonly used: string;
  readonly gust: string;
  readonly headroom: string;
  readonly cost: string;
}

export function tellChoice({ values, figures }: Choice, system: System): ToldChoice {
  const { problem, errors, warnings, governing, firstFailure, headroom, cost } = figures;
  return {
    values: values.map((value) => valueText(value, system)),
    verdict:
      problem !== undefined
        ? `cannot be built as said: ${problem}`
        : errors > 0
          ? `${errors} ${errors === 1 ? 'fails' : 'fail'}`
          : warnings > 0
            ? `holds, ${warnings} to watch`
            : 'holds',
    used: governing === undefined ? '' : `${usedText(governing.utilisation)} ${governing.id}`,
    gust:
      firstFailure === undefined
        ? ''
        : `${firstFailure.beyond ? 'over ' : ''}${format(firstFailure.gust, 'speed', system)} ${firstFailure.part}`.trim(),
    headroom: headroom === undefined ? '' : format(headroom, 'length', system),
    cost:
      cost === undefined ? '' : `${moneyText(cost.total, cost.currency)}${cost.complete ? '' : ' so far'}`,
  };
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
