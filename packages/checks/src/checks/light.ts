import { lightTransmission } from '@tautline/loads';
import { type FilmItem, lengthOf, type SheetItem } from '@tautline/shelter';
import { depthOf } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { setItem, setQuantity } from '../slots.ts';

/** Light lost to dust and dew on the film: common practice, no source. */
const dust = 0.1;
/** Share of the light outside that fruiting crops want at least: common practice, no source. */
const wanted = 0.5;

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { roof, covers, purlins } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return covers.flatMap((cover) => {
    const { skin } = cover;
    if (cover.place !== 'roof' || skin.kind === 'mesh') return [];
    // Shade of the frame: breadth of members over breadth of roof, in both directions.
    const frames = depthOf(roof.member) / roof.spacing;
    const along = purlins.reduce(
      (sum, rail) =>
        sum +
        ((rail.member.kind === 'cable' ? rail.member.diameter : depthOf(rail.member)) * rail.lines.length) /
          lengthOf(roof.line),
      0,
    );
    const frame = Math.min(1, frames + along);
    const light = lightTransmission(skin.light, cover.layers, dust, frame);
    return [
      judge({
        part: cover,
        utilisation: wanted / Math.max(light, 1e-6),
        demand: measured(wanted, 'percent'),
        capacity: measured(light, 'percent'),
        mild: true,
        exact: true,
        message: [
          'Of the light outside ',
          measured(light, 'percent'),
          ` comes through ${skin.title} and its frame; fruiting crops want `,
          measured(wanted, 'percent'),
          '.',
        ],
        source: 'practice',
        steps: [
          step(
            'φ',
            'share shaded by frames and purlins',
            'φ = min(1, d / s + φ_p)',
            [
              given('d', 'breadth of a frame member', depthOf(roof.member), 'length'),
              given('s', 'distance between the frames', roof.spacing, 'length'),
              given('φ_p', 'breadth of purlins over the roof line', along, 'percent'),
            ],
            frame,
            'percent',
            'derived',
          ),
          step(
            'τ',
            'light at the crop over light outside',
            'τ = τ_film^layers (1 - dust) (1 - φ)',
            [
              given('τ_film', 'one new layer', skin.light, 'percent'),
              given('layers', 'layers', cover.layers, 'count'),
              { ...given('dust', 'lost to dust and dew', dust, 'percent'), assumed: true },
            ],
            light,
            'percent',
            'practice',
          ),
        ],
      }),
    ];
  });
}

export const lightCheck: Check = {
  id: 'light',
  title: 'Light',
  nature: 'climate',
  asks: 'How much of the light outside reaches the crop?',
  matters: 'Two old films and a dense frame can cost a third of the harvest in a cloudy season.',
  formula: 'u = 0.5 / τ, τ = τ_film^layers (1 - dust) (1 - φ)',
  symbols: [
    { symbol: 'τ', meaning: 'light at the crop over light outside', kind: 'percent' },
    { symbol: 'φ', meaning: 'share shaded by frames and purlins', kind: 'percent' },
  ],
  sources: ['derived', 'practice'],
  leavesOut:
    'Which way the house lies, ageing and dirt beyond a tenth, neighbours and trees, shade-loving crops.',
  mayBeAccepted: 'For crops that like shade, or where shade is the purpose.',
  run,
  levers: (input, finding, stock) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    if (cover === undefined || cover.skin.kind === 'mesh') return [];
    const { kind, light } = cover.skin;
    const clearer = stock.items
      .filter((entry): entry is FilmItem | SheetItem => entry.kind === kind && entry.light > light)
      .filter((entry) => entry.kind === 'sheet' || entry.grade === 'greenhouse')
      .sort((a, b) => b.light - a.light);
    const single = { title: ['Use one layer'], edits: [setQuantity(cover.origin, 'layers', 1, 'count')] };
    return [
      { type: 'choice', options: cover.layers === 1 ? [] : [single] },
      {
        type: 'choice',
        options: clearer.map((entry) => ({
          title: [`Use ${entry.title}`],
          edits: [setItem(cover.origin, 'with', entry.id)],
        })),
      },
    ];
  },
};
