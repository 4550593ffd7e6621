import type { Rail, SheetItem, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { cableWorking } from '../src/rigging.ts';
import {
  brace,
  finding,
  findings,
  onFeet,
  origin,
  postStock,
  ridgedHouse,
  sidePosts,
  sprungHouse,
  use,
  withCover,
} from './houses.ts';

const purlins = (places: readonly number[]): Rail => ({
  id: 'purlins',
  origin,
  role: 'purlin',
  form: 'rail',
  member: postStock,
  lines: places.map((s) => ({ x: 0, y: 0, s })),
  span: 1.2192,
  tied: true,
});

describe('buckling along the house', () => {
  it('is not checked where only film holds the bows, with the reason', () => {
    const found = finding('bow-buckling', sprungHouse());
    expect(found.verdict).toBe('not checked');
    expect(found.reason).toMatch(/purlin/);
  });

  it('falls when purlins halve the free length', () => {
    const house = ridgedHouse();
    const total = house.roof.line.at(-1)!.s;
    const crown: Shelter = { ...house, purlins: [purlins([total / 2])] };
    const quarters: Shelter = { ...house, purlins: [purlins([total / 4, total / 2, (3 * total) / 4])] };
    expect(use('bow-buckling', quarters)).toBeLessThan(use('bow-buckling', crown));
  });
});

describe('lines at one place', () => {
  it('hold once, and leave no stretch of no length', () => {
    const house = ridgedHouse();
    const total = house.roof.line.at(-1)!.s;
    const once: Shelter = { ...house, purlins: [purlins([total / 2])] };
    const twice: Shelter = { ...house, purlins: [purlins([total / 2, total / 2, total / 2 + 1e-6])] };
    const slenderness = (shelter: Shelter): number => finding('bow-buckling', shelter).steps[0]!.value;
    expect(slenderness(twice)).toBeCloseTo(slenderness(once), 9);
  });
});

describe('posts', () => {
  it('take less thrust unbraced along the house: K = 2.1 against 1', () => {
    const house = ridgedHouse();
    const braced = finding('post-buckling', { ...house, braces: [brace()] });
    const free = finding('post-buckling', house);
    expect(free.capacity!.value).toBeLessThan(braced.capacity!.value);
    expect(braced.steps[0]!.value / free.steps[0]!.value).toBeCloseTo(1 / 2.1, 9);
  });
});

describe('racking', () => {
  it('fails where nothing holds the house along: no brace, and feet that turn', () => {
    const found = finding('racking', sprungHouse());
    expect(found.verdict).toBe('fails');
    expect(found.capacity!.value).toBe(0);
  });

  it('leans on clamped feet where there are any', () => {
    expect(finding('racking', onFeet(sprungHouse(), { fixity: 'clamped' })).capacity!.value).toBeGreaterThan(
      0,
    );
  });

  it('pulls each brace by statics: N = F h / (h_b n cos α), half of the braces pulled', () => {
    const house = { ...sprungHouse(), braces: [brace()] };
    const found = finding('racking', house);
    const [top, pull] = found.steps;
    const force = top!.inputs[0]!.value;
    expect(top!.value).toBeCloseTo((force * (house.roof.rise / 2)) / 2, 6);
    expect(pull!.value).toBeCloseTo((top!.value * Math.SQRT2) / 2, 6);
  });

  it('counts on the fewer that lean one way where an odd number of bays is braced', () => {
    const pull = (count: number): number =>
      finding('racking', { ...sprungHouse(), braces: [brace({ count })] }).demand!.value;
    // Five bays on two sides: three lean one way, two the other.
    expect(pull(10)).toBeCloseTo(pull(8), 6);
    expect(pull(12)).toBeCloseTo((2 / 3) * pull(10), 6);
  });

  it('sets a wire against its clips: 0.8 of the breaking load over 3', () => {
    const wire = { breakingLoad: 9000 } as Parameters<typeof cableWorking>[0];
    expect(cableWorking(wire)).toBeCloseTo(2400, 9);
  });

  it('asks for a stake that was not said', () => {
    const guy = brace({
      id: 'guys',
      role: 'guy',
      member: {
        kind: 'cable',
        id: 'wire',
        title: 'wire',
        source: 'test',
        origin,
        prices: [],
        diameter: 0.004,
        breakingLoad: 9e3,
        modulus: 110e9,
        area: 7e-6,
        massPerLength: 0.06,
      },
      foot: { id: 'guys/foot', origin, kind: 'driven', driven: 0.6, fixity: 'pinned' },
    });
    expect(finding('racking', { ...sprungHouse(), braces: [guy] }).reason).toMatch(/stake/);
  });
});

describe('sheets on purlins', () => {
  const sheet: SheetItem = {
    kind: 'sheet',
    id: 'sheet',
    title: 'clear sheet',
    source: 'test',
    origin,
    prices: [],
    massPerArea: 1.2,
    thickness: 0.001,
    coverWidth: 0.76,
    stockLengths: [2.4],
    greatestSpan: 1,
    light: 0.85,
    life: 3e8,
  };
  const house = withCover(sprungHouse(), { skin: sheet });

  it('are not checked without purlins', () => {
    expect(finding('purlin-span', house).verdict).toBe('not checked');
  });

  it('span from line to line, and load the purlin w s²/8', () => {
    const total = house.roof.line.at(-1)!.s;
    const held = { ...house, purlins: [purlins([total / 2])] };
    const [span, rail] = findings('purlin-span', held);
    expect(span!.demand!.value).toBeCloseTo(total / 2, 9);
    expect(span!.verdict).toBe('fails');
    const [load, moment] = rail!.steps;
    expect(moment!.value).toBeCloseTo((load!.value * 1.2192 ** 2) / 8, 9);
  });
});

describe('splices', () => {
  it('press at the ends of the overlap with 6 M / (d l²)', () => {
    const house = ridgedHouse();
    const { roof } = house;
    if (roof.type !== 'bows') throw new Error('no bows');
    const item = {
      kind: 'coupler',
      id: 'sleeve',
      title: 'sleeve',
      source: 'test',
      origin,
      prices: [],
      form: 'sleeve',
      momentCapacity: 100,
      pullCapacity: 1000,
      insertion: 0.1,
    } as const;
    const joints = [{ id: 'bows/joint-1', origin, item, at: 1.5, assumed: false }];
    const found = finding('splice-overlap', { ...house, roof: { ...roof, joints } });
    const [moment, pressure] = found.steps;
    expect(pressure!.value).toBeCloseTo((6 * moment!.value) / (0.0334 * 0.1 ** 2), -3);
    expect(moment!.value).toBeGreaterThan(0);
  });
});

describe('the eave', () => {
  it('is looked at only where posts stand further apart than the frames', () => {
    const house = { ...sprungHouse(), sidePosts: sidePosts(2, 1.2192) };
    const rail: Rail = { ...purlins([]), id: 'eave', role: 'eave', span: 1.2192 };
    expect(findings('eave-sag', { ...house, eaveRail: rail })).toEqual([]);
  });
});
