import { heatFactors, relaxedShare, sectionOf } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { flatter, thinner } from '../levers.ts';

/** Share of the short-term strength a pipe may be bent to while it goes up: common practice, no source. */
const buildingShare = 0.67;

function run(input: CheckInput): Found[] {
  const bows = input.shelter.roof;
  if (bows.type !== 'bows' || bows.shape !== 'elastic') return [];
  const { member } = bows;
  const { material } = member;
  const c = sectionOf(member).extremeFibre;
  const sharpest = bows.line.reduce((best, point) =>
    Math.abs(point.curvature) > Math.abs(best.curvature) ? point : best,
  );
  const curvature = Math.abs(sharpest.curvature);
  const { coldest } = input.shelter.site;
  const cold = heatFactors(member, coldest);
  const building = material.modulus * cold.modulus * c * curvature;
  const buildingLimit = material.bendingStrength * cold.strength * buildingShare;
  // The bow is held in shape, so heat lets its stress fall along with its strength; the mild pair decides.
  const staying = material.modulus * relaxedShare(member) * c * curvature;
  const stayingLimit = material.sustainedStrength;
  const common = [
    given('c', 'distance to the outer fibre', c, 'length'),
    given('κ_max', 'sharpest curvature', curvature, 'curvature'),
  ];
  const early = building / buildingLimit >= staying / stayingLimit;
  const demand = early ? building : staying;
  const capacity = early ? buildingLimit : stayingLimit;
  return [
    judge({
      part: bows,
      utilisation: demand / capacity,
      demand: measured(demand, 'stress'),
      capacity: measured(capacity, 'stress'),
      loadCase: early ? 'sprung into place on a cold day' : 'years later',
      message: [
        `Springing ${member.title} into this arch locks in a bending stress of `,
        measured(demand, 'stress'),
        early ? ' on the day it goes up; ' : ' that stays for years; ',
        measured(capacity, 'stress'),
        ' is what the material takes.',
      ],
      source: 'timoshenko:beam',
      steps: [
        step(
          'σ_built',
          'locked-in stress on a cold day',
          'σ = E c κ',
          [given('E', 'modulus', material.modulus * cold.modulus, 'stress'), ...common],
          building,
          'stress',
          'timoshenko:beam',
        ),
        step(
          'f_built',
          'stress allowed while building',
          'f = 0.67 f_b',
          [given('f_b', 'bending strength', material.bendingStrength * cold.strength, 'stress')],
          buildingLimit,
          'stress',
          'practice',
        ),
        step(
          'σ_old',
          'locked-in stress left after creep',
          'σ = E_long c κ',
          [
            given('E_long', 'long-term modulus', material.modulus * relaxedShare(member), 'stress'),
            ...common,
          ],
          staying,
          'stress',
          'timoshenko:beam',
        ),
        step('f_old', 'stress that may stay', 'from the catalogue', [], stayingLimit, 'stress', 'catalogue'),
      ],
    }),
  ];
}

export const lockedInStress: Check = {
  id: 'locked-in-stress',
  title: 'Locked-in bending stress',
  asks: 'Does a straight pipe sprung into this arch take the bending that stays in it?',
  matters:
    'A sprung pipe is under stress before any wind blows. Too much, and it cracks when cold or creeps out of shape when hot.',
  formula: 'u = max(σ_built / f_built, σ_old / f_old), σ = E c κ',
  symbols: [
    {
      symbol: 'E',
      meaning: 'modulus, short-term on the cold day, long-term later',
      kind: 'stress',
    },
    {
      symbol: 'c',
      meaning: 'distance from the centre line to the outer fibre',
      kind: 'length',
    },
    {
      symbol: 'κ',
      meaning: 'sharpest curvature of the sprung bow',
      kind: 'curvature',
    },
  ],
  sources: ['timoshenko:beam', 'catalogue', 'practice'],
  leavesOut:
    'Heat beyond the handbook (a hot pipe loses stress and strength together), scratches, glue at couplers, sunlight on unpainted pipe.',
  mayBeAccepted: 'For a season only, with stock that has been sprung to the same arch before.',
  run,
  levers: (input, _finding, stock) => {
    const bows = input.shelter.roof;
    return bows.type === 'bows' ? [flatter(bows), thinner(bows, stock)] : [];
  },
};
