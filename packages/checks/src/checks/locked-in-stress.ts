import { heatFactors, relaxedShare, sectionOf, stormTemperature } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { flatter, thinner } from '../levers.ts';
import { buildingLimit, memberLimit } from '../resistance.ts';

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
  const { site } = input.shelter;
  const cold = heatFactors(member, site.coldest);
  const building = material.modulus * cold.modulus * c * curvature;
  const mayBeBuilt = buildingLimit(site, member);
  const staying = material.modulus * relaxedShare(member) * c * curvature;
  // What springs back cannot be factored as a load is: on every basis it is held to the allowable stress.
  const mayStay = memberLimit({ ...site, basis: 'asce7-asd' }, member, 'permanent', false, stormTemperature);
  const common = [
    given('c', 'distance to the outer fibre', c, 'length'),
    given('κ_max', 'sharpest curvature', curvature, 'curvature'),
  ];
  const early = building / mayBeBuilt.bending >= staying / mayStay.bending;
  const demand = early ? building : staying;
  const capacity = (early ? mayBeBuilt : mayStay).bending;
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
          'σ = E c κ_max',
          [
            given('E', 'modulus in the cold', material.modulus * cold.modulus, 'stress'),
            given('ϑ_cold', 'coldest day of building', site.coldest, 'temperature'),
            ...common,
          ],
          building,
          'stress',
          'timoshenko:beam',
        ),
        ...mayBeBuilt.steps,
        step(
          'σ_old',
          'locked-in stress left after creep',
          'σ = E_long c κ_max',
          [
            given('E_long', 'long-term modulus', material.modulus * relaxedShare(member), 'stress'),
            ...common,
          ],
          staying,
          'stress',
          'timoshenko:beam',
        ),
        ...mayStay.steps,
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
    'How fast the springing falls in the first days, and a storm in them. A hot pipe is not asked for its springing: held bent, it relaxes as it softens. Scratches, glue at couplers, sunlight on unpainted pipe, a blow in the frost.',
  mayBeAccepted: 'For a season only, with stock that has been sprung to the same arch before.',
  run,
  levers: (input, _finding, stock) => {
    const bows = input.shelter.roof;
    return bows.type === 'bows' ? [flatter(bows), thinner(bows, stock)] : [];
  },
};
