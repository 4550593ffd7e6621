import {
  daylightHours,
  extraterrestrialRadiation,
  irrigationDemand,
  saturationPressure,
  solarRadiation,
} from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, measured, notChecked, step } from '../judge.ts';
import { remark } from '../remark.ts';
import { setWord } from '../slots.ts';

/** Crop coefficient of vegetables in full growth, FAO-56 table 12 (0.95 to 1.15). */
const cropCoefficient = 1.05;
/** Share of the water given that reaches the crop: common practice, as FAO-56 uses it. */
const efficiency = { drip: 0.9, sprinkler: 0.75, hand: 0.75, none: 0.9 } as const;
/** Joules of a day's MJ/m2 as mean W/m2: by definition. */
const meanWatts = 1e6 / 86_400;

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  if (shelter.crops.length === 0 && shelter.irrigation === undefined) return [];
  if (shelter.irrigation === 'none')
    return [
      remark(
        shelter,
        'fails',
        ['The roof keeps all rain off the crop, and the spec says that no water is given back.'],
        'derived',
      ),
    ];
  const day = shelter.site.dryDay;
  const { coldest, hottest, on, sunshine, breeze } = day ?? {};
  if (
    coldest === undefined ||
    hottest === undefined ||
    on === undefined ||
    sunshine === undefined ||
    breeze === undefined
  ) {
    const missing = [
      ...(hottest === undefined ? ['dry-day'] : []),
      ...(sunshine === undefined ? ['sunshine'] : []),
      ...(breeze === undefined ? ['breeze'] : []),
    ];
    return [
      notChecked(shelter, `the site does not say ${missing.join(', ')}, which tell what the crop drinks`),
    ];
  }
  return [told(shelter, { coldest, hottest, on, sunshine, breeze })];
}

/** Day of the year of an ISO date, 1..366. */
function dayIn(date: string): number {
  const start = Date.parse(`${date.slice(0, 4)}-01-01T00:00:00Z`);
  return Math.round((Date.parse(`${date}T00:00:00Z`) - start) / 86_400_000) + 1;
}

function told(
  shelter: Shelter,
  day: { coldest: number; hottest: number; on: string; sunshine: number; breeze: number },
): Found {
  const { site, covers, opening } = shelter;
  const dayOfYear = dayIn(day.on);
  const outside = extraterrestrialRadiation(site.latitude, dayOfYear);
  const sun = solarRadiation(outside, day.sunshine / 3600, daylightHours(site.latitude, dayOfYear));
  const roof = covers.find((cover) => cover.place === 'roof');
  const through = roof === undefined || roof.skin.kind === 'mesh' ? 1 : roof.skin.light ** roof.layers;
  const share = efficiency[shelter.irrigation ?? 'drip'];
  const demand = irrigationDemand(
    {
      hottest: day.hottest,
      coldest: day.coldest,
      // FAO-56 eq. 48: where no humidity is known, the air is full at the coolest of the day.
      vapour: saturationPressure(day.coldest) * 1000,
      wind: day.breeze,
      radiation: sun * meanWatts,
      latitude: site.latitude,
      day: dayOfYear,
      elevation: site.elevation,
    },
    {
      light: through,
      wind: opening.sides === 'clad' ? 0.1 : 0.5,
      crop: cropCoefficient,
      efficiency: share,
    },
  );
  const area = shelter.width * shelter.length;
  const perDay = demand.rate * area * 86_400;
  return remark(
    shelter,
    'passes',
    [
      'On a dry day the crop under the roof wants ',
      measured(perDay, 'water'),
      ' of water, ',
      measured(perDay / area, 'length'),
      ' over the whole floor.',
    ],
    'fao56:6',
    [
      step(
        'R_s',
        'sun of the day, its mean',
        'R_s = (0.25 + 0.5 n/N) R_a',
        [
          given('n', 'hours of sun', day.sunshine, 'time'),
          given('J', 'day of the year', dayOfYear, 'count'),
          given('R_a', 'above the air, its mean', outside * meanWatts, 'irradiance'),
        ],
        sun * meanWatts,
        'irradiance',
        'fao56:35',
      ),
      ...demand.steps.map((entry) => ({
        ...entry,
        inputs: entry.inputs.map((input) =>
          input.symbol === 'K_c' || input.symbol === 'η' ? { ...input, assumed: true } : input,
        ),
      })),
    ],
  );
}

export const irrigation: Check = {
  id: 'irrigation',
  title: 'Water for the crop',
  nature: 'climate',
  asks: 'How much water has to be given, now that the roof keeps all rain off?',
  matters: 'A roofed bed dries out in the middle of the wet season, and nobody thinks of watering then.',
  formula: 'I = K_c ET_o / η, ET_o by Penman-Monteith with the light and wind the roof leaves',
  symbols: [
    { symbol: 'ET_o', meaning: 'reference evapotranspiration under the roof', kind: 'rain-rate' },
    { symbol: 'K_c', meaning: 'crop coefficient, 1.05 taken for vegetables in full growth', kind: 'ratio' },
    { symbol: 'η', meaning: 'share of the water that reaches the crop', kind: 'ratio' },
  ],
  sources: ['fao56:6', 'fao56:35', 'fao56:58', 'practice'],
  leavesOut:
    'The crop and its age, water that creeps in from the sides, beds that cover only part of the floor.',
  mayBeAccepted: 'Where roots reach ground water.',
  run,
  levers: ({ shelter }) =>
    shelter.irrigation === 'none'
      ? [
          {
            type: 'choice',
            options: [
              {
                title: ['Give the water back by drip'],
                edits: [setWord(shelter.origin, 'irrigation', 'drip')],
              },
            ],
          },
        ]
      : [],
};
