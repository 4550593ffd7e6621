import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  columnStress,
  type Duration,
  type Family,
  filmLife,
  filmStress,
  heatBalance,
  irrigationDemand,
  memberResistance,
  plasticDuration,
  RATED_DOSE,
  referenceEvapotranspiration,
  type SnowCase,
  screenFactor,
  snowActions,
} from '../src/index.ts';

const families = fc.constantFrom<Family>(
  'pvc',
  'steel',
  'aluminium',
  'timber',
  'bamboo',
  'green-wood',
  'glass-fibre',
  'other',
);
const bases = fc.constantFrom('asce7-asd', 'asce7-strength', 'eurocode' as const);
const durations = fc.constantFrom<Duration>('permanent', 'season', 'weeks', 'days', 'gust');
const member = { bendingStrength: 40e6, shearStrength: 15e6, modulus: 5e9 } as const;

describe('member resistance', () => {
  it('is greatest for a gust, and allowable stress is below design stress', () => {
    fc.assert(
      fc.property(families, bases, durations, (family, basis, duration) => {
        const at = (d: Duration, b = basis): number =>
          memberResistance({ ...member, family, basis: b, duration: d }).bending;
        expect(at(duration)).toBeGreaterThan(0);
        expect(at(duration)).toBeLessThanOrEqual(at('gust') + 1e-6);
        expect(at(duration, 'asce7-asd')).toBeLessThan(at(duration, 'asce7-strength'));
      }),
    );
  });

  it('falls with heat for plastic and wood', () => {
    for (const family of ['pvc', 'timber'] as const) {
      const at = (temperature: number): number =>
        memberResistance({ ...member, family, basis: 'asce7-asd', duration: 'gust', temperature }).bending;
      expect(at(55)).toBeLessThan(at(23));
    }
  });

  it('scales with the unit of stress (it has no hidden units) for plastic and wood', () => {
    fc.assert(
      fc.property(families, bases, fc.double({ min: 0.1, max: 10, noNaN: true }), (family, basis, k) => {
        const a = memberResistance({ ...member, family, basis, duration: 'days' });
        const b = memberResistance({
          family,
          basis,
          duration: 'days',
          bendingStrength: member.bendingStrength * k,
          shearStrength: member.shearStrength * k,
          modulus: member.modulus * k,
        });
        // EN classes metal tube by 235 MPa, so only the plain factors must scale.
        if (family !== 'steel') expect(b.bending / a.bending).toBeCloseTo(k, 8);
      }),
    );
  });

  it('says so where no standard stands behind it', () => {
    for (const family of ['glass-fibre', 'pvc', 'green-wood'] as const) {
      expect(
        memberResistance({ ...member, family, basis: 'eurocode', duration: 'gust' }).notCovered,
      ).not.toEqual([]);
    }
  });
});

describe('columns', () => {
  it('fall with slenderness and never pass the short column or Euler', () => {
    fc.assert(
      fc.property(
        families,
        bases,
        fc.double({ min: 5, max: 300, noNaN: true }),
        (family, basis, slenderness) => {
          const input = {
            family,
            basis,
            slenderness,
            modulus: 5e9,
            shortColumn: 20e6,
            crushing: 20e6,
          } as const;
          const { stress } = columnStress(input);
          expect(stress).toBeLessThanOrEqual(20e6 * (1 + 1e-12));
          expect(stress).toBeLessThanOrEqual((Math.PI ** 2 * 5e9) / slenderness ** 2);
          expect(columnStress({ ...input, slenderness: slenderness * 1.1 }).stress).toBeLessThanOrEqual(
            stress,
          );
        },
      ),
    );
  });
});

describe('plastic under load', () => {
  it('keeps all its strength for minutes and 57 % for 100,000 hours', () => {
    expect(plasticDuration(0.1)).toBe(1);
    expect(plasticDuration(1e5)).toBeCloseTo(27.6 / 48.3, 10);
  });
});

describe('film', () => {
  it('may have less stress hot and long than cold and short', () => {
    expect(filmStress(10e6, 60, 'permanent').allowable).toBeLessThan(filmStress(10e6, 10, 'gust').allowable);
  });

  it('lives its rated life at the rated dose, half of it at twice, and never over 1.5 times', () => {
    expect(filmLife(100, RATED_DOSE).life).toBeCloseTo(100, 10);
    expect(filmLife(100, 2 * RATED_DOSE).life).toBeCloseTo(50, 10);
    expect(filmLife(100, RATED_DOSE / 4).life).toBe(150);
  });
});

describe('climate', () => {
  const house = {
    floor: 60,
    skin: 110,
    light: 0.75,
    sun: 800,
    inlet: 10,
    outlet: 10,
    porosity: 1,
    height: 1,
    wind: 1,
    outside: 30,
  } as const;

  it('balances: gain is loss through skin and air', () => {
    const { rise, airflow } = heatBalance(house);
    expect((6.5 * 110 + 1.164 * 1007 * airflow) * rise).toBeCloseTo(0.5 * 0.75 * 800 * 60, 3);
  });

  it('is cooler with more opening and more wind, hotter behind a screen', () => {
    const { rise } = heatBalance(house);
    expect(heatBalance({ ...house, inlet: 20, outlet: 20 }).rise).toBeLessThan(rise);
    expect(heatBalance({ ...house, wind: 2 }).rise).toBeLessThan(rise);
    expect(heatBalance({ ...house, porosity: 0.4 }).rise).toBeGreaterThan(rise);
    expect(screenFactor(1)).toBe(1);
  });

  it('asks for less water under a cover that shades and calms than outside', () => {
    const weather = {
      hottest: 30,
      coldest: 18,
      vapour: 1800,
      wind: 2,
      radiation: 250,
      latitude: -0.4,
      day: 20,
      elevation: 480,
    } as const;
    const demand = irrigationDemand(weather, { light: 0.75, wind: 0.5, crop: 1, efficiency: 1 });
    expect(demand.rate).toBeLessThan(referenceEvapotranspiration(weather).rate);
    expect(demand.rate).toBeGreaterThan(0);
  });
});

/** Load of a case at a share of the span, Pa on plan. */
function loadAt(snow: SnowCase, share: number): number {
  const zone = snow.zones.find(({ from, to }) => share >= from && share <= to);
  if (zone === undefined || zone.to === zone.from) return 0;
  return zone.loadFrom + ((zone.loadTo - zone.loadFrom) * (share - zone.from)) / (zone.to - zone.from);
}

describe('snow', () => {
  it('lies within the span, is finite and never negative', () => {
    fc.assert(
      fc.property(
        bases,
        fc.constantFrom('arch', 'gable', 'single-slope' as const),
        fc.double({ min: 2, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (basis, form, span, rise, share) => {
          const { cases } = snowActions(
            { basis, groundSnow: 1200, exposure: 'open', lowHazard: true },
            { form, span, rise },
          );
          expect(cases.length).toBeGreaterThan(0);
          for (const item of cases) {
            const load = loadAt(item, share);
            expect(Number.isFinite(load)).toBe(true);
            expect(load).toBeGreaterThanOrEqual(0);
            expect(load).toBeLessThanOrEqual(2 * 1200 * 1.2 + 1500);
          }
        },
      ),
    );
  });

  it('is the same on both sides when balanced, heavier to leeward when drifted', () => {
    for (const basis of ['asce7-asd', 'eurocode'] as const) {
      const { cases } = snowActions(
        { basis, groundSnow: 1000, exposure: 'open', lowHazard: false },
        { form: 'arch', span: 6, rise: 1.5 },
      );
      const balanced = cases.find((item) => item.id === 'balanced')!;
      const drifted = cases.find((item) => item.id === 'unbalanced')!;
      expect(loadAt(balanced, 0.3)).toBeCloseTo(loadAt(balanced, 0.7), 8);
      expect(loadAt(drifted, 0.75)).toBeGreaterThan(loadAt(drifted, 0.25));
    }
  });

  it('needs no case without ground snow', () => {
    const none = snowActions(
      { basis: 'eurocode', groundSnow: 0, exposure: 'open', lowHazard: true },
      { form: 'arch', span: 6, rise: 1.5 },
    );
    expect(none.cases).toEqual([]);
  });
});
