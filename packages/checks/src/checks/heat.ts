import { heatBalance } from '@tautline/loads';
import { lengthOf, type MeshItem, quantityValue, type Shelter, type SpecEdit } from '@tautline/shelter';
import type { Check, CheckInput, Lever } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { higher } from '../levers.ts';
import { setQuantity, setWord } from '../slots.ts';

/** Light air that is nearly always there, m/s, and a hot day, °C: assumed, since no site says them. */
const lightAir = 1;
const hotDay = 32;
/** Sun outside the air, W/m2 (from memory), and the share that reaches the ground in clear air (FAO-56 eq. 37). */
const solarConstant = 1361;
const clearAir = 0.75;
/** Tilt of the earth, rad: from memory. */
const tilt = (23.44 * Math.PI) / 180;
/** Rise over the air outside that crops and people still bear: common practice, no source. */
const allowed = 8;

/** Sun on level ground at noon of the day when it stands highest, W/m2. */
function noonSun(latitude: number): number {
  const away = Math.max(0, Math.abs(latitude) - tilt);
  return solarConstant * clearAir * Math.cos(away);
}

/** Open area at one side and at one end, m2, and the open share of a screen in them. */
function openings(shelter: Shelter): { sides: number; ends: number; porosity: number } {
  const { roof, opening, length, width, covers } = shelter;
  const mesh = covers.find((cover) => cover.place === 'sides' && cover.skin.kind === 'mesh');
  const wall = roof.springing * length;
  const clad = covers
    .filter((cover) => cover.place === 'sides' && cover.skin.kind !== 'mesh')
    .reduce((sum, cover) => sum + Math.max(0, Math.min(cover.upTo, roof.springing) - cover.from) * length, 0);
  const sides = opening.sides === 'clad' ? Math.max(0, wall - clad) : wall;
  const ends = opening.ends === 'open' ? width * roof.springing + (2 / 3) * width * roof.rise : 0;
  const screened = opening.sides === 'screened' ? (mesh?.skin as MeshItem | undefined)?.porosity : undefined;
  return { sides, ends, porosity: screened ?? 1 };
}

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { roof, site, length, width, covers } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const cover = covers.find((entry) => entry.place === 'roof');
  if (cover === undefined || cover.skin.kind === 'mesh') return [];
  if (shelter.unmodelled.some((entry) => entry.what.includes('roll up')))
    return [notChecked(shelter, 'sides that roll up are not in the model')];
  if (shelter.opening.ends === 'clad' && shelter.doors !== undefined)
    return [notChecked(shelter, 'the ends have doors: nothing says whether they stand open')];
  const { sides, ends, porosity } = openings(shelter);
  if (sides > 0 && porosity < 1 && ends > 0)
    return [notChecked(shelter, 'open ends beside screened sides are not covered by one balance')];
  // Air comes in on one side (or end) and leaves on the other.
  const open = sides + ends;
  const sun = noonSun(site.latitude);
  const balance = heatBalance({
    floor: length * width,
    skin: lengthOf(roof.line) * length,
    light: cover.skin.light ** cover.layers,
    sun,
    inlet: open,
    outlet: open,
    porosity: sides > 0 ? porosity : 1,
    // Inlet and outlet lie at one height: only the upper half of the same opening draws.
    height: (roof.springing > 0 ? roof.springing : roof.rise) / 2,
    wind: lightAir,
    outside: hotDay,
  });
  return [
    judge({
      part: shelter,
      utilisation: balance.rise / allowed,
      demand: measured(balance.rise, 'temperature-difference'),
      capacity: measured(allowed, 'temperature-difference'),
      loadCase: 'clear noon of midsummer in light air',
      mild: true,
      message: [
        'At a clear noon of midsummer, in light air, it gets ',
        measured(balance.rise, 'temperature-difference'),
        ' hotter inside than outside with ',
        measured(open, 'area'),
        ' of opening at each side; ',
        measured(allowed, 'temperature-difference'),
        ' are borne.',
      ],
      source: 'ep406:balance',
      steps: [
        step(
          'I',
          'sun on level ground at noon of midsummer',
          'I = I_0 τ cos(max(0, |φ| - δ))',
          [
            given('I_0', 'sun outside the air', solarConstant, 'irradiance'),
            given('τ', 'share that clear air lets through', clearAir, 'ratio'),
            given('φ', 'latitude of the site', site.latitude, 'angle'),
            given('δ', 'height of the sun over the equator at midsummer', tilt, 'angle'),
          ],
          sun,
          'irradiance',
          'sun-altitude',
        ),
        step(
          'A',
          'opening where air comes in, and as much where it leaves',
          'A = A_side + A_end',
          [
            given('A_side', 'open side', sides, 'area'),
            given('A_end', 'open end', ends, 'area'),
            { ...given('v', 'light air', lightAir, 'speed'), assumed: true },
            { ...given('ϑ', 'air outside', hotDay, 'temperature'), assumed: true },
          ],
          open,
          'area',
          'derived',
        ),
        ...balance.steps,
      ],
    }),
  ];
}

export const heat: Check = {
  id: 'heat',
  title: 'Heat',
  nature: 'climate',
  asks: 'Do open sides and ends carry the heat of a summer noon away?',
  matters: 'Pollen dies and fruit scalds above a certain heat, and people under film fall ill at it.',
  formula: 'u = ΔT / 8 °C, (1 - E) τ I A_floor = (U A_skin + ρ c V) ΔT',
  symbols: [
    { symbol: 'ΔT', meaning: 'rise over the air outside', kind: 'temperature-difference' },
    { symbol: 'I', meaning: 'sun on level ground', kind: 'irradiance' },
    { symbol: 'V', meaning: 'air through the openings', kind: 'flow' },
    { symbol: 'E', meaning: 'share that leaves as vapour of the crop', kind: 'ratio' },
  ],
  sources: ['ep406:balance', 'ashrae:natural-ventilation', 'sun-altitude', 'practice'],
  leavesOut:
    'Still air, shade from trees, young crops that sweat little, the middle of long houses, doors, sides that roll up.',
  mayBeAccepted: 'Where the house stands empty in summer.',
  run,
  levers,
};

/** Open ends, a higher wall or arch, then a shorter house: the ends of a long one air its middle no better. */
function levers({ shelter }: CheckInput): Lever[] {
  const { roof, sidePosts, covers, opening, origin, length: long, width } = shelter;
  const list: Lever[] = [];
  if (opening.ends === 'clad') {
    const clad = covers.filter((cover) => cover.place === 'ends');
    list.push({
      type: 'choice',
      options: [
        {
          title: ['Leave both ends open'],
          edits: [
            setWord(origin, 'ends', 'open'),
            ...clad.map((cover): SpecEdit => ({ type: 'remove', node: cover.origin })),
          ],
        },
      ],
    });
  }
  if (sidePosts !== undefined)
    list.push({
      type: 'number',
      from: sidePosts.height,
      towards: sidePosts.height * 2,
      steps: { metric: 0.1, us: 0.0762 },
      title: (value) => ['Make the side posts ', measured(value, 'length'), ' high'],
      edits: (value) => [setQuantity(sidePosts.origin, 'height', value, 'length')],
    });
  else if (roof.type === 'bows') list.push(higher(roof));
  const foot = 0.3048;
  list.push({
    type: 'number',
    from: long,
    towards: long / 4,
    steps: { metric: 0.5, us: foot },
    title: (value) => [
      'Build houses no longer than ',
      measured(value, 'length'),
      ', with a gap between them',
    ],
    edits: (value) => [
      {
        type: 'set',
        block: origin,
        word: 'footprint',
        slots: {
          width: quantityValue(width, 'length', origin),
          length: quantityValue(value, 'length', origin),
        },
      },
    ],
  });
  return list;
}
