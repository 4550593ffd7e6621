import type { Cover, MemberItem, Rail, SheetItem, Shelter } from '@tautline/shelter';
import { coverWeight, sectionOf, weightPerLength } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, inWords, judge, measured, step } from '../judge.ts';
import { closer, stouter } from '../levers.ts';
import { type Limit, type Told, unknown } from '../limit.ts';
import { type MemberLimit, memberLimit } from '../resistance.ts';
import { closerLines, sheetSpan, sheetWind } from '../sheet-load.ts';

type SheetCover = Cover & { readonly skin: SheetItem };

const noLines = 'no purlins were said, so what the sheets are screwed to is not known';

function onSheet(shelter: Shelter, cover: Cover, sheet: SheetItem): Found {
  const span = sheetSpan(shelter);
  return judge({
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
      inWords('b', 'widest distance between lines', 'b = max(s_k+1 - s_k)', [], span, 'length', 'derived'),
      inWords(
        'b_max',
        'greatest span of the sheet',
        'from the catalogue',
        [],
        sheet.greatestSpan,
        'length',
        'catalogue',
      ),
    ],
  });
}

interface PurlinLoad {
  /** Wind and weight on the sheets, Pa; down where that is the larger. */
  readonly pressure: number;
  readonly down: boolean;
  readonly load: number;
  readonly moment: number;
  readonly weak: number;
  readonly stress: number;
}

/** A purlin between two frames under the sheets it holds; `scale` multiplies the wind pressure. */
function purlinLoad(
  shelter: Shelter,
  rail: Rail,
  member: MemberItem,
  cover: Cover,
  breadth: number,
  scale: number,
): PurlinLoad {
  const { site } = shelter;
  const wind = sheetWind(shelter, 'edge');
  const up = scale * wind.suction;
  const pressed = scale * wind.pressure + coverWeight(cover) + site.groundSnow;
  const down = pressed >= up;
  const pressure = Math.max(up, pressed);
  const load = pressure * breadth + (down ? weightPerLength(member) : 0);
  const moment = (load * rail.span ** 2) / 8;
  // A purlin lies flat or on edge as it comes: the weaker way counts.
  const { section } = member;
  const weak =
    section.shape === 'rectangle'
      ? (Math.max(section.depth, section.breadth) * Math.min(section.depth, section.breadth) ** 2) / 6
      : sectionOf(member).sectionModulus;
  return { pressure, down, load, moment, weak, stress: moment / weak };
}

/** A purlin between two frames, in the rain. */
function ofPurlin(shelter: Shelter, rail: Rail, cover: SheetCover, breadth: number): Limit {
  const { member } = rail;
  if (member.kind === 'cable') return unknown(rail, 'sheets on a cable are not covered');
  const limit = memberLimit(shelter.site, member, 'gust', true);
  return {
    by: 'pressure',
    part: rail,
    gives: `the purlin under ${cover.skin.title} bends past its strength`,
    sacrificial: rail.sacrificial === true,
    use: (factor) => {
      const load = purlinLoad(shelter, rail, member, cover, breadth, factor);
      return {
        utilisation: load.stress / limit.bending,
        loadCase: load.down ? 'pressure on the sheets' : 'suction on the sheets',
        tell: () => tell(rail, member, breadth, load, limit),
      };
    },
  };
}

function tell(
  rail: Rail,
  member: MemberItem,
  breadth: number,
  { pressure, down, load, moment, weak, stress }: PurlinLoad,
  limit: MemberLimit,
): Told {
  return {
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    message: [
      `The purlin of ${member.title} spans `,
      measured(rail.span, 'length'),
      ' and is stressed to ',
      measured(stress, 'stress'),
      down ? ' by pressure on the sheets' : ' by suction on the sheets',
      '; it may take ',
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      step(
        'w',
        'load along the purlin',
        down ? 'w = p b + g' : 'w = p b',
        [
          given('p', 'pressure at the edge of the roof', pressure, 'pressure'),
          given('b', 'distance between purlins', breadth, 'length'),
          ...(down ? [given('g', 'weight of the purlin', weightPerLength(member), 'line-load')] : []),
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
  };
}

const sheetRoofs = ({ roof, covers }: Shelter): readonly SheetCover[] =>
  roof.type === 'bows' || roof.type === 'rafters'
    ? covers.filter((cover): cover is SheetCover => cover.place === 'roof' && cover.skin.kind === 'sheet')
    : [];

function run({ shelter }: CheckInput): Found[] {
  if (shelter.purlins.length === 0) return [];
  return sheetRoofs(shelter).map((cover) => onSheet(shelter, cover, cover.skin));
}

function limits({ shelter }: CheckInput): Limit[] {
  if (shelter.purlins.length === 0) return sheetRoofs(shelter).map((cover) => unknown(cover, noLines));
  const breadth = sheetSpan(shelter);
  return sheetRoofs(shelter).flatMap((cover) =>
    shelter.purlins.map((rail) => ofPurlin(shelter, rail, cover, breadth)),
  );
}

export const purlinSpan: Check = {
  id: 'purlin-span',
  title: 'Sheets and purlins',
  asks: 'Are the lines under a sheet roof close enough for the sheet, and stout enough from frame to frame?',
  matters: 'Sheets that span too far sag and crack at their screws; a purlin that snaps takes a row with it.',
  formula: 'u = b / b_max; u = (p b + g) s² / (8 W f_b), g where it is pressed down',
  symbols: [
    { symbol: 'b', meaning: 'distance between two lines', kind: 'length' },
    { symbol: 'b_max', meaning: 'greatest span of the sheet', kind: 'length' },
    { symbol: 'p', meaning: 'pressure or suction on the sheets', kind: 'pressure' },
    { symbol: 's', meaning: 'distance between the frames', kind: 'length' },
    { symbol: 'g', meaning: 'weight of the purlin', kind: 'line-load' },
    { symbol: 'W', meaning: 'section modulus, the weaker way', kind: 'section-modulus' },
  ],
  sources: ['catalogue', 'beam-table', 'asce7-22:30.3-2', 'en1991-1-4:7.2.5'],
  leavesOut:
    'The sheets and their screws in a gust (sheet-hold), snow drifts, a person on the sheets, purlins that run over several frames.',
  mayBeAccepted: 'When the maker of the sheet gives a wider span for this load.',
  appliesTo: (shelter) => sheetRoofs(shelter).length > 0,
  run,
  limits,
  levers,
};

function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { purlins, roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const rail = purlins.find((entry) => entry.id === finding.part);
  if (rail !== undefined && rail.member.kind !== 'cable')
    return [stouter({ origin: rail.origin, member: rail.member }, stock), closer(roof, 'frames')];
  return closerLines(input.shelter);
}
