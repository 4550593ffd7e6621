/**
 * The built-in catalogue, read by the language itself, against published tables: sizes in the other system of
 * units, section properties and weights, none of which the catalogue states.
 */
import { loadWorkspace } from '@tautline/language';
import { rectangle, roundHollow, roundSolid, type Section } from '@tautline/mechanics';
import { type JointItem, type MemberItem, newNotes, originOf, resolveItem } from '@tautline/shelter';
import { beforeAll, describe, expect, test } from 'vitest';

let member: (id: string) => MemberItem;
let socket: (id: string) => JointItem;

beforeAll(async () => {
  const uri = 'file:///check/empty.shelter';
  const loaded = await loadWorkspace([{ uri, text: 'site here { gust 30 m/s }' }]);
  const world = loaded.worldOf(uri)!;
  member = (id) => {
    const item = resolveItem(id, ['pipe', 'rod', 'lumber'], world, newNotes(), originOf('test'));
    if (!item || !('section' in item)) throw new Error(`${id} is no member of the catalogue`);
    return item;
  };
  socket = (id) => {
    const item = resolveItem(id, ['coupler'], world, newNotes(), originOf('test'));
    if (item?.kind !== 'coupler') throw new Error(`${id} is no coupler of the catalogue`);
    return item;
  };
});

function sectionOf({ section }: MemberItem): Section {
  if (section.shape === 'round-hollow') return roundHollow(section.outside, section.wall);
  if (section.shape === 'round-solid') return roundSolid(section.outside);
  return rectangle(section.depth, section.breadth);
}

const inch = 0.0254;
const pound = 0.45359237;
const foot = 0.3048;

describe('PVC pipe against the millimetre columns of ASTM D1785-88 (outside least and most, least wall of schedules 40 and 80)', () => {
  test.each([
    [15, 21.24, 21.44, 2.77, 3.73],
    [20, 26.57, 26.77, 2.87, 3.91],
    [25, 33.27, 33.53, 3.38, 4.55],
    [32, 42.03, 42.29, 3.56, 4.85],
    [40, 48.11, 48.41, 3.68, 5.08],
    [50, 60.17, 60.47, 3.91, 5.54],
    [65, 72.84, 73.2, 5.16, 7.01],
    [80, 88.7, 89.1, 5.49, 7.62],
  ])('DN %i', (dn, least, most, wall40, wall80) => {
    for (const [schedule, wall] of [
      [40, wall40],
      [80, wall80],
    ] as const) {
      const { section } = member(`pvc${schedule}-${dn}`);
      if (section.shape !== 'round-hollow') throw new Error('a pipe is hollow');
      expect(section.outside * 1000).toBeCloseTo((least + most) / 2, 1);
      expect(section.wall * 1000).toBeCloseTo(wall, 1);
    }
  });
});

describe('schedule 40 steel pipe against printed section tables (I in4 and S in3: Machine Elements in Mechanical Design, 4th ed., table A16-6; lb/ft: a pipe schedule chart to B36.10)', () => {
  test.each([
    [15, 0.01709, 0.0407, 0.851],
    [20, 0.03704, 0.07055, 1.131],
    [25, 0.08734, 0.1328, 1.679],
    [32, 0.1947, 0.2346, 2.273],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a weight that the table prints
    [40, 0.3099, 0.3262, 2.718],
    [50, 0.6658, 0.5607, 3.653],
  ])('DN %i', (dn, secondMoment, modulus, weight) => {
    const pipe = member(`gal-${dn}`);
    const section = sectionOf(pipe);
    expect(section.secondMoment / inch ** 4 / secondMoment).toBeCloseTo(1, 2);
    expect(section.sectionModulus / inch ** 3 / modulus).toBeCloseTo(1, 2);
    expect((((section.area * pipe.material.density) / pound) * foot) / weight).toBeCloseTo(1, 2);
  });
});

describe('thin-wall conduit against weights of makers to ANSI C80.3 (lb per 100 ft)', () => {
  test.each([
    [21, 46],
    [27, 67],
    [35, 101],
    [41, 116],
  ])('metric designator %i', (designator, weight) => {
    const tube = member(`emt-${designator}`);
    const computed = ((sectionOf(tube).area * tube.material.density) / pound) * foot * 100;
    expect(Math.abs(computed / weight - 1)).toBeLessThan(0.015);
  });

  test('bends no tighter than NEC chapter 9 table 2, one-shot bender (in)', () => {
    for (const [designator, radius] of [
      [16, 4],
      [21, 4.5],
      [27, 5.75],
      [35, 7.25],
      [41, 8.25],
      [53, 9.5],
    ] as const)
      expect(member(`emt-${designator}`).leastBendRadius! / inch).toBeCloseTo(radius, 9);
  });
});

describe('thin-wall conduit against the association of its makers, "EMT Weights and Dimensions" (nominal outside and wall, in and mm)', () => {
  test.each([
    [16, 0.706, 0.042, 17.9, 1.07],
    [21, 0.922, 0.049, 23.4, 1.25],
    [27, 1.163, 0.057, 29.5, 1.45],
    [35, 1.51, 0.065, 38.4, 1.65],
    [41, 1.74, 0.065, 44.2, 1.65],
    [53, 2.197, 0.065, 55.8, 1.65],
  ])('metric designator %i', (designator, outside, wall, outsideMm, wallMm) => {
    const { section } = member(`emt-${designator}`);
    if (section.shape !== 'round-hollow') throw new Error('a tube is hollow');
    expect(section.outside / inch).toBeCloseTo(outside, 9);
    expect(section.wall / inch).toBeCloseTo(wall, 9);
    expect(section.outside * 1000).toBeCloseTo(outsideMm, 0);
    expect(section.wall * 1000).toBeCloseTo(wallMm, 1);
  });
});

describe("medium tube of EN 10255 against a maker's table (outside least and most, wall in mm, kg/m)", () => {
  test.each([
    [15, 21.4, 21.7, 2.6, 1.21],
    [20, 26.9, 27.2, 2.6, 1.56],
    [25, 33.8, 34.2, 3.2, 2.41],
    [32, 42.5, 42.9, 3.2, 3.1],
    [40, 48.4, 48.8, 3.2, 3.57],
    [50, 60.2, 60.8, 3.6, 5.03],
  ])('DN %i', (dn, least, most, wall, weight) => {
    const pipe = member(`medium-${dn}`);
    if (pipe.section.shape !== 'round-hollow') throw new Error('a pipe is hollow');
    // That table gives the range of screwed tube, whose middle lies a little over the nominal size.
    expect(Math.abs((pipe.section.outside * 1000) / ((least + most) / 2) - 1)).toBeLessThan(0.015);
    expect(pipe.section.wall * 1000).toBeCloseTo(wall, 9);
    expect(Math.abs((sectionOf(pipe).area * pipe.material.density) / weight - 1)).toBeLessThan(0.015);
  });
});

describe('rebar against the nominal areas of ASTM A615 table 1 (in2)', () => {
  test.each([
    [10, 0.11],
    [12, 0.2],
    [16, 0.31],
  ])('%i mm', (size, area) => {
    expect(sectionOf(member(`rebar-${size}`)).area / inch ** 2).toBeCloseTo(area, 2);
  });
});

describe("metric rebar against a maker's table of B500 bars to EN 10080 (mm2, kg/m, yield in MPa)", () => {
  test.each([
    [8, 50.27, 0.395],
    [10, 78.54, 0.617],
    [12, 113.1, 0.888],
    [16, 201.06, 1.578],
  ])('%i mm', (size, area, mass) => {
    const bar = member(`bar-${size}`);
    expect(sectionOf(bar).area * 1e6).toBeCloseTo(area, 1);
    expect(sectionOf(bar).area * bar.material.density).toBeCloseTo(mass, 2);
    expect(bar.material.bendingStrength / 1e6).toBeCloseTo(500, 6);
  });
});

describe("glued sockets against the least lengths of ASTM D2466 and D2467 (schedule 40, 80, in, a maker's guide)", () => {
  test.each([
    [15, 0.688, 0.875],
    [20, 0.719, 1],
    [25, 0.875, 1.125],
    [32, 0.938, 1.25],
    [40, 1.094, 1.375],
    [50, 1.156, 1.5],
  ])('DN %i', (size, least, heavy) => {
    expect(socket(`socket-${size}`).insertion / inch).toBeCloseTo(least, 2);
    expect(socket(`socket80-${size}`).insertion / inch).toBeCloseTo(heavy, 3);
  });
});

test('fence rail of ASTM F1043 group IC yields at 50,000 psi (a public specification of fences)', () => {
  expect(member('toprail-42').material.bendingStrength / 6894.757).toBeCloseTo(50_000, 0);
});

describe('lumber against NDS Supplement table 1B (area in2, S in3, I in4)', () => {
  test.each([
    ['1x3', 1.875, 0.781, 0.977],
    ['1x4', 2.625, 1.531, 2.68],
    ['1x6', 4.125, 3.781, 10.4],
    ['2x2', 2.25, 0.5625, 0.422],
    ['2x3', 3.75, 1.563, 1.953],
    ['2x4', 5.25, 3.063, 5.359],
    ['2x6', 8.25, 7.563, 20.8],
    ['4x4', 12.25, 7.146, 12.51],
    ['4x6', 19.25, 17.65, 48.53],
    ['6x6', 30.25, 27.73, 76.26],
  ])('%s', (size, area, modulus, secondMoment) => {
    const section = sectionOf(member(`lumber-${size}`));
    expect(section.area / inch ** 2 / area).toBeCloseTo(1, 3);
    expect(section.sectionModulus / inch ** 3 / modulus).toBeCloseTo(1, 2);
    expect(section.secondMoment / inch ** 4 / secondMoment).toBeCloseTo(1, 2);
  });
});
