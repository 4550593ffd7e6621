import { describe, expect, it } from 'vitest';
import {
  agedFastener,
  agedFilm,
  agedInSoil,
  agedPvc,
  ballastSliding,
  ballastUplift,
  bearingCapacity,
  boltBearing,
  boxGutter,
  claddingSuction,
  columnStress,
  combinations,
  concreteFootUplift,
  deadmanUplift,
  embeddedSideways,
  endWind,
  type Family,
  fasteningPull,
  filmLife,
  filmStress,
  flutterTension,
  footSprings,
  halfRoundGutter,
  heatBalance,
  irrigationDemand,
  lateralCapacity,
  manningFlow,
  memberResistance,
  meshPull,
  personLoad,
  postEmbedmentLateral,
  postUplift,
  RATED_DOSE,
  rainLoad,
  runoff,
  SOILS,
  type SoilClass,
  type Step,
  screwAnchorUplift,
  screwInMetal,
  screwInWood,
  sheetBending,
  sheetOverWasher,
  snowActions,
  sourceOf,
  sources,
  stubUplift,
  thrustAndBending,
  tubeCrushing,
  wallCladding,
  windActions,
  woodBearing,
  woodBearingEn,
} from '../src/index.ts';

const BASES = ['asce7-asd', 'asce7-strength', 'eurocode'] as const;
const KINDS = new Set([
  'length',
  'thickness',
  'area',
  'angle',
  'slope',
  'mass',
  'force',
  'moment',
  'stress',
  'pressure',
  'line-load',
  'speed',
  'rain-rate',
  'time',
  'temperature',
  'density',
  'stiffness',
  'rotational-stiffness',
  'ratio',
  'percent',
  'count',
  'flow',
  'irradiance',
  'heat-loss',
  'temperature-difference',
]);
const FAMILIES: readonly Family[] = [
  'pvc',
  'polyethylene',
  'steel',
  'aluminium',
  'timber',
  'bamboo',
  'green-wood',
  'glass-fibre',
  'polycarbonate',
  'concrete',
  'other',
];

/** Every step the package can make, over shapes, bases, families and soils. */
function everyStep(): Step[] {
  const steps: Step[] = [];
  const used: string[] = [];
  const take = (result: { readonly steps: readonly Step[]; readonly source?: string }): void => {
    steps.push(...result.steps);
    if (result.source) used.push(result.source);
  };
  for (const basis of BASES) {
    for (const combination of combinations(basis, true)) used.push(combination.source);
    take(personLoad(basis));
    for (const form of ['arch', 'gable', 'single-slope'] as const) {
      for (const sides of ['open', 'clad', 'screened'] as const) {
        for (const rise of [0.2, 1.6]) {
          const shape = {
            form,
            span: 14,
            length: 20,
            rise,
            springing: 2,
            sides,
            ends: sides === 'open' ? 'open' : 'clad',
          } as const;
          const site = {
            gust: 42,
            gustReturnPeriod: 50,
            exposure: 'open',
            elevation: 0,
            topography: 1,
            basis,
            lowHazard: true,
            groundSnow: 900,
          } as const;
          for (const item of windActions(site, shape).cases) take(item);
          take(claddingSuction(site, shape));
          for (const item of endWind(site, shape).cases) take(item);
          take(wallCladding(site, shape, 'ends'));
          for (const item of snowActions(site, shape).cases) take(item);
        }
      }
    }
    for (const family of FAMILIES) {
      const member = {
        family,
        basis,
        bendingStrength: 40e6,
        shearStrength: 15e6,
        modulus: 10e9,
        duration: 'gust',
      } as const;
      take(memberResistance(member));
      take(memberResistance({ ...member, outside: 0.03, wall: 0.002 }));
      take(
        columnStress({ family, basis, slenderness: 90, modulus: 10e9, shortColumn: 20e6, crushing: 20e6 }),
      );
      steps.push(thrustAndBending({ family, basis, axial: 0.3, bending: 0.5 }).step);
      steps.push(thrustAndBending({ family, basis, axial: 0.3, bending: 0.5, stocky: true }).step);
    }
    steps.push(woodBearing(3e6, 0.05, 0.04, true, basis).step, boltBearing(0.008, 0.0015, 400e6, basis).step);
    steps.push(
      woodBearingEn(2.2e6, 0.05, 0.04, 'gust', true).step,
      tubeCrushing(1e8, 0.03, 0.002, 0.05).step,
    );
    steps.push(
      screwInWood({ diameter: 0.006, grip: 0.04, density: 420 }, true, basis).step,
      screwInMetal(0.006, 0.0015, 300e6, basis).step,
      sheetOverWasher(0.016, 0.0008, 60e6, basis).step,
      sheetBending(60e6, basis).step,
    );
  }
  for (const soil of Object.keys(SOILS) as SoilClass[]) {
    used.push(SOILS[soil].source);
    take(stubUplift({ soil, diameter: 0.04, depth: 0.6, stay: 'gust' }));
    take(stubUplift({ soil, diameter: 0.04, depth: 0.6, waterlogged: true }));
    take(postUplift({ soil, girth: 0.36, depth: 0.6 }));
    take(postUplift({ soil, girth: 0.36, depth: 0.6, waterlogged: true }));
    take(concreteFootUplift({ soil, diameter: 0.3, depth: 0.8 }));
    take(deadmanUplift({ soil, breadth: 0.2, length: 1, depth: 0.7 }));
    take(screwAnchorUplift({ soil, breadth: 0.15, depth: 0.7 }));
    take(ballastUplift({ soil, mass: 100 }));
    take(ballastSliding({ soil, mass: 100 }, 200, 0.1));
    take(bearingCapacity({ soil, breadth: 0.2, length: 0.2, depth: 0.3 }));
    for (const [height, stay] of [
      [0, 'gust'],
      [3, 'season'],
    ] as const) {
      const hold = embeddedSideways({
        soil,
        setting: 'hole',
        width: 0.09,
        depth: 0.4,
        height,
        stay,
        basis: 'asce7-asd',
        pressed: 200,
        underside: 0.01,
        allowedMoment: 300,
      });
      take(hold);
      take(hold.expected);
    }
    take(lateralCapacity({ soil, diameter: 0.04, depth: 0.6, height: 0.3, head: 'free' }));
    take(postEmbedmentLateral({ soil, width: 0.1, depth: 0.8, height: 1, constrained: false }));
    take(footSprings({ soil, depth: 0.6, rigidity: 600 }));
  }
  steps.push(
    rainLoad(0.05, 0.01).step,
    filmStress(10e6, 50, 'gust').step,
    fasteningPull(2000, 40, 'days').step,
    meshPull(8000, 40, 'gust').step,
    filmLife(1e8, RATED_DOSE).step,
    agedFilm(1e7, 1e8).step,
    agedFastener('polyester', 1e7, 1e8).step,
    agedFastener(undefined, 1e7, 1e8).step,
    agedPvc(1e8).step,
    agedInSoil('bamboo', false, 1e7)!.step,
    agedInSoil('timber', false, 1e7)!.step,
    flutterTension(500, 1.2, 2).step,
    runoff(3e-5, 60).step,
    halfRoundGutter(0.1, 8).step,
    boxGutter(0.15, 0.1, 8).step,
    manningFlow(0.02, 0.3, 0.005, 0.013).step,
  );
  take(
    irrigationDemand(
      {
        hottest: 30,
        coldest: 18,
        vapour: 1800,
        wind: 2,
        radiation: 250,
        latitude: -0.4,
        day: 20,
        elevation: 480,
      },
      { light: 0.75, wind: 0.5, crop: 1.05, efficiency: 0.9 },
    ),
  );
  take(
    heatBalance({
      floor: 60,
      skin: 110,
      light: 0.75,
      sun: 800,
      inlet: 14,
      outlet: 14,
      porosity: 1,
      height: 1,
      wind: 1,
      outside: 30,
    }),
  );
  for (const id of used) expect(() => sourceOf(id)).not.toThrow();
  return steps;
}

describe('every step', () => {
  const steps = everyStep();

  it('names a source of the list', () => {
    for (const step of steps) expect(sources[step.source], `${step.symbol}: ${step.source}`).toBeDefined();
  });

  it('has a finite value, a kind that can be shown, and inputs likewise', () => {
    for (const step of steps) {
      for (const item of [step, ...step.inputs]) {
        expect(Number.isFinite(item.value), `${step.symbol}/${item.symbol}`).toBe(true);
        expect(KINDS.has(item.kind), `${step.symbol}/${item.symbol}: ${item.kind}`).toBe(true);
      }
    }
  });
});

describe('sources', () => {
  it('have one id each, and an unknown id is an error', () => {
    for (const [id, source] of Object.entries(sources)) expect(source.id).toBe(id);
    expect(() => sourceOf('nowhere')).toThrow(RangeError);
  });

  it('are all used by some step, combination or soil', () => {
    const unused = new Set(Object.keys(sources));
    for (const step of everyStep()) unused.delete(step.source);
    for (const basis of BASES) for (const { source } of combinations(basis, true)) unused.delete(source);
    for (const soil of Object.values(SOILS)) unused.delete(soil.source);
    expect([...unused]).toEqual([]);
  });
});
