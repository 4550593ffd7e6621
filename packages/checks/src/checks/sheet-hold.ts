import { type ScrewHold, screwInMetal, screwInWood, sheetBending, sheetOverWasher } from '@tautline/loads';
import type { Cover, FasteningItem, MemberItem, SheetItem, Shelter } from '@tautline/shelter';
import { coverWeight, sheetSection } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, type Told, unknown } from '../limit.ts';
import { closerLines, type SheetWind, sheetSpan, sheetWind } from '../sheet-load.ts';
import { setItem, setQuantity } from '../slots.ts';

type SheetCover = Cover & { readonly skin: SheetItem };

/** Pull on the second line from an edge of a sheet over two spans, over the load of one span: beam tables, 1989. */
const innerLine = 1.25;

/** Roofs of sheet that lie on purlins; others have no lines that hold them. */
export function heldSheets(shelter: Shelter): readonly SheetCover[] {
  const { roof, purlins, covers } = shelter;
  if ((roof.type !== 'bows' && roof.type !== 'rafters') || purlins.length === 0) return [];
  return covers.filter((cover): cover is SheetCover => cover.place === 'roof' && cover.skin.kind === 'sheet');
}

/** What is worked out of a sheet once for all gusts. */
interface Held {
  readonly cover: SheetCover;
  readonly span: number;
  readonly wind: SheetWind;
  /** What presses it without wind, Pa: weight, and snow. */
  readonly down: number;
  readonly bend: { readonly modulus: number; readonly stress: number } | Reason;
  readonly screw: Screw | Reason;
}

interface Reason {
  readonly reason: string;
}

interface Screw {
  readonly item: FasteningItem;
  readonly spacing: number;
  /** The weaker of tearing over the washer and coming out of what it is screwed into. */
  readonly hold: ScrewHold;
  readonly holds: readonly ScrewHold[];
}

function held(shelter: Shelter, cover: SheetCover): Held {
  const { skin } = cover;
  return {
    cover,
    span: sheetSpan(shelter),
    wind: sheetWind(shelter, 'corner'),
    down: coverWeight(cover) + shelter.site.groundSnow,
    bend:
      skin.strength === undefined
        ? { reason: `the catalogue gives ${skin.title} no strength` }
        : {
            modulus: sheetSection(skin).sectionModulus,
            stress: sheetBending(skin.strength, shelter.site.basis).stress,
          },
    screw: screwOf(shelter, cover),
  };
}

function screwOf(shelter: Shelter, { skin, fastening, fasteningSpacing }: SheetCover): Screw | Reason {
  if (fastening === undefined) return { reason: 'what the sheets are screwed down with was not said' };
  if (fastening.screw === undefined)
    return { reason: `${fastening.title} has no thread, length and washer in the catalogue` };
  if (fasteningSpacing === undefined)
    return { reason: `how far apart the pieces of ${fastening.title} are was not said` };
  if (skin.strength === undefined) return { reason: `the catalogue gives ${skin.title} no strength` };
  const { basis } = shelter.site;
  const { diameter, length, washer } = fastening.screw;
  const grip = length - (skin.waves?.depth ?? skin.thickness);
  const holds = [sheetOverWasher(washer, skin.thickness, skin.strength, basis)];
  const rails = [...shelter.purlins, ...(shelter.eaveRail === undefined ? [] : [shelter.eaveRail])];
  for (const { member } of rails) {
    if (member.kind === 'cable') return { reason: 'sheets on a cable are not covered' };
    const hold = inMember(member, diameter, grip, basis);
    if ('reason' in hold) return hold;
    holds.push(hold);
  }
  const hold = holds.reduce((least, one) => (one.force < least.force ? one : least));
  return { item: fastening, spacing: fasteningSpacing, hold, holds };
}

function inMember(
  { section, material, title }: MemberItem,
  diameter: number,
  grip: number,
  basis: Shelter['site']['basis'],
): ScrewHold | Reason {
  const { family, density } = material;
  if (family === 'steel' || family === 'aluminium') {
    const wall = section.shape === 'round-hollow' ? section.wall : undefined;
    return wall === undefined
      ? { reason: `what a screw holds in ${title} is not covered` }
      : screwInMetal(diameter, wall, material.bendingStrength, basis);
  }
  if (family !== 'timber') return { reason: `what a screw holds in ${title} is not covered` };
  const thick = section.shape === 'rectangle' ? Math.min(section.depth, section.breadth) : section.outside;
  return screwInWood({ diameter, grip: Math.max(0, Math.min(grip, thick)), density }, true, basis);
}

/** Bending stress in the sheet, Pa, and the pull of one screw, N; `scale` multiplies the wind pressure. */
function bentBy(
  { wind, down, span, bend }: Held,
  scale: number,
): { load: number; up: boolean; stress: number } {
  const lifted = scale * wind.suction;
  const pressed = scale * wind.pressure + down;
  const load = Math.max(lifted, pressed);
  const modulus = 'reason' in bend ? Number.NaN : bend.modulus;
  return { load, up: lifted > pressed, stress: (load * span ** 2) / 8 / modulus };
}

function pullOf({ wind, span }: Held, screw: Screw, scale: number): number {
  return scale * wind.suction * innerLine * span * screw.spacing;
}

function limits({ shelter }: CheckInput): Limit[] {
  return heldSheets(shelter).flatMap((cover) => {
    const one = held(shelter, cover);
    return [ofBending(shelter, one), ofScrew(one)];
  });
}

function ofBending(shelter: Shelter, one: Held): Limit {
  const { cover, bend } = one;
  if ('reason' in bend) return unknown(cover, bend.reason);
  return {
    by: 'pressure',
    part: cover,
    gives: `${cover.skin.title} bends past its strength`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const bent = bentBy(one, factor);
      return {
        utilisation: bent.stress / bend.stress,
        loadCase: onSheets(bent.up),
        tell: () => tellBending(shelter, one, bent, bend),
      };
    },
  };
}

const onSheets = (up: boolean): string => (up ? 'suction on the sheets' : 'pressure on the sheets');

function tellBending(
  { site }: Shelter,
  { cover, span, wind }: Held,
  { load, up, stress }: ReturnType<typeof bentBy>,
  bend: Exclude<Held['bend'], Reason>,
): Told {
  const how = onSheets(up);
  return {
    demand: measured(stress, 'stress'),
    capacity: measured(bend.stress, 'stress'),
    message: [
      `${cover.skin.title} is stressed to `,
      measured(stress, 'stress'),
      ` by ${how} at a corner of the roof, over `,
      measured(span, 'length'),
      ' between two lines that hold it; it may take ',
      measured(bend.stress, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      ...wind.steps,
      step(
        'M',
        'bending of a strip of the sheet, per width',
        'M = p b² / 8',
        [given('p', how, load, 'pressure'), given('b', 'distance between lines', span, 'length')],
        (load * span ** 2) / 8,
        'force',
        'beam-table',
      ),
      step(
        'σ',
        'bending stress',
        'σ = M / W',
        [given('W', 'section modulus of a strip 1 m wide', bend.modulus, 'section-modulus')],
        stress,
        'stress',
        'timoshenko:beam',
      ),
      sheetBending(cover.skin.strength!, site.basis).step,
    ],
  };
}

function ofScrew(one: Held): Limit {
  const { cover, screw } = one;
  const part = { id: `${cover.id}/screws`, origin: cover.origin };
  if ('reason' in screw) return unknown(part, screw.reason);
  return {
    by: 'pressure',
    part,
    gives: `${screw.item.title} lets the sheets go`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => ({
      utilisation: pullOf(one, screw, factor) / Math.max(screw.hold.force, 1e-6),
      loadCase: onSheets(true),
      tell: () => tellScrew(one, screw, factor),
    }),
  };
}

function tellScrew(one: Held, screw: Screw, scale: number): Told {
  const { span, wind } = one;
  const { item, spacing, hold, holds } = screw;
  const pull = pullOf(one, screw, scale);
  const tears = hold === holds[0];
  return {
    demand: measured(pull, 'force'),
    capacity: measured(hold.force, 'force'),
    message: [
      `Suction at a corner of the roof pulls ${item.title} with `,
      measured(pull, 'force'),
      tears
        ? '; the sheet tears over its washer beyond '
        : '; it comes out of what it is screwed into beyond ',
      measured(hold.force, 'force'),
      '.',
    ],
    source: hold.step.source,
    steps: [
      ...wind.steps,
      step(
        'F',
        'pull of one screw in the line next to an edge',
        'F = 1.25 p b s',
        [
          given('p', 'suction at a corner of the roof', scale * wind.suction, 'pressure'),
          given('b', 'distance between lines', span, 'length'),
          given('s', 'distance between screws along a line', spacing, 'length'),
        ],
        pull,
        'force',
        'beam-table',
      ),
      ...holds.map((each) => each.step),
    ],
  };
}

export const sheetHold: Check = {
  id: 'sheet-hold',
  title: 'Sheets and their screws in a gust',
  asks: 'Do the sheets of a roof bend too far between the lines that hold them, and do their screws stay in?',
  matters:
    'Sheets go at a corner first: one screw that lets go loads the next, and a loose sheet flies far and cuts.',
  formula: 'u = p b² / (8 W f_b); u = 1.25 p b s / min(F_p, F_w, F_o)',
  symbols: [
    {
      symbol: 'p',
      meaning: 'suction, or pressure with weight and snow, at a corner of the roof',
      kind: 'pressure',
    },
    { symbol: 'b', meaning: 'distance between two lines', kind: 'length' },
    { symbol: 's', meaning: 'distance between screws along a line', kind: 'length' },
    { symbol: 'W', meaning: 'section modulus of a strip 1 m wide', kind: 'section-modulus' },
    { symbol: 'f_b', meaning: 'bending stress the sheet may have', kind: 'stress' },
    { symbol: 'F_p', meaning: 'pull at which the sheet tears over the washer', kind: 'force' },
    { symbol: 'F_w', meaning: 'pull at which the screw comes out of wood', kind: 'force' },
    { symbol: 'F_o', meaning: 'pull at which it comes out of a thin wall', kind: 'force' },
  ],
  sources: [
    'beam-table',
    'timoshenko:beam',
    'practice:guard-factor',
    'aisi-s100:j4',
    'en1993-1-3:8.2',
    'nds:12.2',
    'en1995-1-1:8.7.2',
    'asce7-22:30.3-2',
    'en1991-1-4:7.2.5',
  ],
  leavesOut:
    'The age and the heat of the sheets, dents and cracks at screws, flat waves that buckle, screws through the foot of a wave, the screw itself breaking, a sheet without purlins, sheets on sides and ends. The rules for the washer are made for thin steel.',
  mayBeAccepted: 'When the maker of the sheet gives its span and its screws for this wind.',
  appliesTo: (shelter) => heldSheets(shelter).length > 0,
  limits,
  levers,
};

/** Closer screws, more lines under the sheets, then screws that hold more. */
function levers({ shelter }: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const cover = heldSheets(shelter).find(({ id }) => finding.part === id || finding.part === `${id}/screws`);
  if (cover === undefined) return [];
  if (finding.part === cover.id) return closerLines(shelter);
  const { fastening, fasteningSpacing: every } = cover;
  const screw = fastening?.screw;
  if (fastening === undefined || screw === undefined || every === undefined) return closerLines(shelter);
  const longer = stock.items.filter(
    (item): item is FasteningItem =>
      item.kind === 'fastening' &&
      item.screw !== undefined &&
      item.id !== fastening.id &&
      item.screw.length * item.screw.diameter * item.screw.washer >
        screw.length * screw.diameter * screw.washer,
  );
  return [
    {
      type: 'number',
      from: every,
      towards: every / 6,
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => [`Set ${fastening.title} every `, measured(value, 'length')],
      edits: (value) => [setQuantity(cover.origin, 'fastened', value, 'length')],
    },
    ...closerLines(shelter),
    {
      type: 'choice',
      options: longer.map(({ id, title }) => ({
        title: [`Hold them with ${title}`],
        edits: [setItem(cover.origin, 'fastened', id)],
      })),
    },
  ];
}
