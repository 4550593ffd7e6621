import { claddingSuction } from '@tautline/loads';
import {
  type Cover,
  lengthOf,
  quantityValue,
  type Rail,
  type SheetItem,
  type Shelter,
} from '@tautline/shelter';
import { coverWeight, sectionOf, weightPerLength, windShape } from '@tautline/structure';
import { windFactor } from '../basis.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer, stouter } from '../levers.ts';
import { memberLimit } from '../resistance.ts';

/** Lines that a sheet is screwed to, from eave to eave, m along the frame. */
function sheetLines(shelter: Shelter): readonly number[] {
  const { roof, purlins } = shelter;
  const total = lengthOf(roof.line);
  const lines = purlins.flatMap((rail) =>
    rail.lines.flatMap((line) => (line.s === undefined ? [] : [line.s])),
  );
  return [0, ...lines, total].sort((a, b) => a - b);
}

function widest(lines: readonly number[]): number {
  return Math.max(...lines.slice(1).map((line, index) => line - lines[index]!));
}

function onSheet(shelter: Shelter, cover: Cover, sheet: SheetItem): Finding[] {
  if (shelter.purlins.length === 0) {
    return [
      notChecked(
        purlinSpan.id,
        cover,
        'no purlins were said, so what the sheets are screwed to is not known',
      ),
    ];
  }
  const span = widest(sheetLines(shelter));
  return [
    judge({
      id: purlinSpan.id,
      part: cover,
      utilisation: span / sheet.greatestSpan,
      demand: measured(span, 'length'),
      capacity: measured(sheet.greatestSpan, 'length'),
      exact: true,
      message: [
        `${sheet.title} spans `,
        measured(span, 'length'),
        ' between two lines that hold it; it takes ',
        measured(sheet.greatestSpan, 'length'),
        '.',
      ],
      source: 'catalogue',
      steps: [
        step('b', 'widest distance between lines', 'b = max(s_k+1 - s_k)', [], span, 'length', 'derived'),
        step(
          'b_max',
          'greatest span of the sheet',
          'from the catalogue',
          [],
          sheet.greatestSpan,
          'length',
          'catalogue',
        ),
      ],
    }),
    ...shelter.purlins.map((rail) => onPurlin(shelter, rail, cover, span)),
  ];
}

/** A purlin between two frames under the suction or pressure on the sheets it holds. */
function onPurlin(shelter: Shelter, rail: Rail, cover: Cover, breadth: number): Finding {
  const { member } = rail;
  if (member.kind === 'cable') return notChecked(purlinSpan.id, rail, 'sheets on a cable are not covered');
  const { site } = shelter;
  const zones = claddingSuction(site, windShape(shelter)).zones;
  const edge = zones.find((zone) => zone.place === 'edge');
  const factor = windFactor(site);
  const up = factor * Math.max(0, -(edge?.suction ?? 0));
  const down = factor * (edge?.pressure ?? 0) + coverWeight(cover) + site.groundSnow;
  const pressure = Math.max(up, down);
  const load = pressure * breadth + (down >= up ? weightPerLength(member) : 0);
  const moment = (load * rail.span ** 2) / 8;
  const section = sectionOf(member);
  // A purlin lies flat or on edge as it comes: the weaker way counts.
  const weak =
    member.section.shape === 'rectangle'
      ? (Math.max(member.section.depth, member.section.breadth) *
          Math.min(member.section.depth, member.section.breadth) ** 2) /
        6
      : section.sectionModulus;
  const stress = moment / weak;
  const limit = memberLimit(site, member, 'gust', true);
  return judge({
    id: purlinSpan.id,
    part: rail,
    utilisation: stress / limit.bending,
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    loadCase: down >= up ? 'pressure on the sheets' : 'suction on the sheets',
    message: [
      `The purlin of ${member.title} spans `,
      measured(rail.span, 'length'),
      ' and is stressed to ',
      measured(stress, 'stress'),
      down >= up ? ' by pressure on the sheets' : ' by suction on the sheets',
      '; it may take ',
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      step(
        'w',
        'load along the purlin',
        'w = p b',
        [
          given('p', 'pressure at the edge of the roof', pressure, 'pressure'),
          given('b', 'distance between purlins', breadth, 'length'),
        ],
        load,
        'line-load',
        'statics',
      ),
      step(
        'M',
        'bending between two frames',
        'M = w s² / 8',
        [given('s', 'distance between the frames', rail.span, 'length')],
        moment,
        'moment',
        'beam-table',
      ),
      step(
        'σ',
        'bending stress, laid the weaker way',
        'σ = M / W',
        [given('W', 'section modulus', weak, 'section-modulus')],
        stress,
        'stress',
        'timoshenko:beam',
      ),
      ...limit.steps,
    ],
  });
}

function run(input: CheckInput): Finding[] {
  const { shelter } = input;
  if (shelter.roof.type !== 'bows' && shelter.roof.type !== 'rafters') return [];
  return shelter.covers.flatMap((cover) =>
    cover.place === 'roof' && cover.skin.kind === 'sheet' ? onSheet(shelter, cover, cover.skin) : [],
  );
}

export const purlinSpan: Check = {
  id: 'purlin-span',
  title: 'Sheets and purlins',
  asks: 'Are the lines under a sheet roof close enough for the sheet, and stout enough from frame to frame?',
  matters: 'Sheets that span too far sag and crack at their screws; a purlin that snaps takes a row with it.',
  formula: 'u = b / b_max; u = p b s² / (8 W f_b)',
  symbols: [
    { symbol: 'b', meaning: 'distance between two lines', kind: 'length' },
    { symbol: 'b_max', meaning: 'greatest span of the sheet', kind: 'length' },
    { symbol: 'p', meaning: 'pressure or suction on the sheets', kind: 'pressure' },
    { symbol: 's', meaning: 'distance between the frames', kind: 'length' },
    { symbol: 'W', meaning: 'section modulus, the weaker way', kind: 'section-modulus' },
  ],
  sources: ['catalogue', 'beam-table', 'asce7-22:30.3-2', 'en1991-1-4:7.2.5'],
  leavesOut: 'Screws and washers, snow drifts, a person on the sheets, purlins that run over several frames.',
  mayBeAccepted: 'When the maker of the sheet gives a wider span for this load.',
  run,
  levers,
};

function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { purlins, roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const rail = purlins.find((entry) => entry.id === finding.part);
  if (rail !== undefined && rail.member.kind !== 'cable')
    return [stouter({ origin: rail.origin, member: rail.member }, stock), closer(roof, 'frames')];
  const first = purlins[0];
  if (first === undefined) return [];
  return [
    {
      type: 'choice',
      options: [1, 2, 3, 4, 6, 8, 10].map((extra) => ({
        title: [`Lay ${first.lines.length + extra} purlins`],
        edits: [
          {
            type: 'replace' as const,
            node: first.origin,
            slots: { count: quantityValue(first.lines.length + extra, 'count', first.origin) },
          },
        ],
      })),
    },
  ];
}
