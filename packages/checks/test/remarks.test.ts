import { clearHeightAt, type Shelter, type Thing } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import {
  finding,
  findings,
  onFeet,
  origin,
  postStock,
  pvc,
  sprungHouse,
  use,
  withCover,
  withMember,
} from './houses.ts';

const house = sprungHouse();
const bamboo = { ...postStock, id: 'bamboo', material: { ...pvc, id: 'bamboo', family: 'bamboo' as const } };

describe('what film lies on', () => {
  it('warns of bare bamboo, and is content once it is wrapped', () => {
    const bare = withMember(house, bamboo);
    expect(finding('abrasion', bare)).toMatchObject({ verdict: 'fails', severity: 'warning' });
    const { roof } = bare;
    if (roof.type !== 'bows') throw new Error('no bows');
    expect(finding('abrasion', { ...bare, roof: { ...roof, wrapped: true } }).verdict).toBe('passes');
  });
});

describe('wood in the soil', () => {
  const poked = onFeet(withMember(house, bamboo), { kind: 'poked' });

  it('rots untreated', () => {
    expect(finding('rot', poked).verdict).toBe('fails');
  });

  it('lasts treated, and plastic is not asked', () => {
    const treated = { ...bamboo, material: { ...bamboo.material, treated: true } };
    expect(finding('rot', withMember(poked, treated)).verdict).toBe('passes');
    expect(findings('rot', house)).toEqual([]);
  });
});

describe('metals', () => {
  it('quarrel where aluminium meets steel', () => {
    const metal = (family: 'steel' | 'aluminium') => ({
      ...postStock,
      material: { ...pvc, id: family, family },
    });
    const rail = {
      id: 'purlins',
      origin,
      role: 'purlin',
      form: 'rail',
      member: metal('aluminium'),
      lines: [],
      span: 1.2,
      tied: true,
    } as const;
    const mixed: Shelter = { ...withMember(house, metal('steel')), purlins: [rail] };
    expect(finding('dissimilar-metals', mixed).verdict).toBe('fails');
    expect(findings('dissimilar-metals', { ...mixed, purlins: [] })).toEqual([]);
  });
});

describe('room under the settled roof', () => {
  const tank = {
    id: 'tank',
    origin,
    kind: 'tank',
    name: 'spinach tank',
    width: 1,
    length: 3,
    lefts: [0.3],
    starts: 0,
    height: 0.9,
    clearance: 0,
  } as const;
  const under = (thing: Partial<Thing>) => {
    const made: Shelter = { ...house, crops: [], requirements: [], things: [{ ...tank, ...thing }] };
    return finding('bow-deflection', made);
  };

  it('looks over the whole width of what stands there: the lowest place is at the side', () => {
    const found = under({});
    expect(found.part).toBe('tank');
    const wider = under({ lefts: [0.1], width: 1.2 });
    expect(wider.capacity!.value).toBeLessThan(found.capacity!.value);
    const built = clearHeightAt(house, 0.3)!;
    expect(found.capacity!.value).toBeGreaterThan(0.7 * built);
    expect(found.capacity!.value).toBeLessThan(1.2 * built);
  });

  it('adds the room to keep free above it', () => {
    const free = under({ clearance: 0.45 });
    expect(free.utilisation! / under({}).utilisation!).toBeCloseTo(1.5, 9);
    expect(free.message.join(' ')).toContain('room to keep free');
  });

  it('is the same on both sides of a house that is the same on both sides', () => {
    const mirrored = under({ lefts: [house.width - 0.3 - 1] });
    expect(mirrored.capacity!.value).toBeCloseTo(under({}).capacity!.value, 2);
  });

  it('asks nothing of a thing whose height is not said', () => {
    expect(under({ height: 0 }).verdict).toBe('not checked');
  });
});

describe('climate under the roof', () => {
  it('lets a second film cost its share of the light', () => {
    const one = finding('light', house).capacity!.value;
    const two = finding('light', withCover(house, { layers: 2 })).capacity!.value;
    expect(two / one).toBeCloseTo(0.88, 9);
  });

  it('is hotter with its ends shut', () => {
    expect(use('heat', { ...house, opening: { ends: 'clad', sides: 'clad' } })).toBeGreaterThan(
      use('heat', house),
    );
  });

  it('says which facts of the site it lacks to tell what a crop drinks', () => {
    const cropped: Shelter = {
      ...house,
      crops: [{ id: 'crop', origin, name: 'ginger', hung: 0, height: 1, fromSide: 0.5 }],
    };
    expect(finding('irrigation', cropped).reason).toMatch(/dry-day, sunshine, breeze/);
    const dryDay = { coldest: 14, hottest: 29, on: '2026-10-15', sunshine: 9 * 3600, breeze: 2 };
    const found = finding('irrigation', { ...cropped, site: { ...house.site, dryDay } });
    const metresADay = found.message.filter((piece) => typeof piece !== 'string')[1]!;
    // Between 2 and 8 mm a day: the range of FAO-56 table 2 for warm climates, less under a roof.
    expect((metresADay as { value: number }).value).toBeGreaterThan(0.002);
    expect((metresADay as { value: number }).value).toBeLessThan(0.008);
  });

  it('warns where no water is given back', () => {
    expect(finding('irrigation', { ...house, irrigation: 'none' }).verdict).toBe('fails');
  });
});

describe('water off the roof', () => {
  it('sends half of the plan to each eave: Q = i A / 2', () => {
    const found = finding('runoff', house);
    expect(found.steps[0]!.value).toBeCloseTo((house.site.rain * house.width * house.length) / 2, 12);
  });

  it('fills a gutter between two houses with twice that', () => {
    const gutter = { id: 'gutter', origin, across: 0.15 } as const;
    const side = use('runoff', { ...house, gutters: [{ ...gutter, where: 'sides' }] });
    const between = use('runoff', { ...house, gutters: [{ ...gutter, where: 'between' }] });
    expect(between).toBeCloseTo(2 * side, 9);
  });

  it('asks how wide the gutter is', () => {
    const { verdict, reason } = finding('runoff', {
      ...house,
      gutters: [{ id: 'g', origin, where: 'sides' }],
    });
    expect(verdict).toBe('not checked');
    expect(reason).toMatch(/wide/);
  });
});

describe('facts of the site', () => {
  it('names those that were taken for granted', () => {
    const assumed = [
      { part: 'site', fact: 'soil', value: 'loam', kind: 'word', why: 'garden soil', origin },
    ] as const;
    expect(findings('site-facts', house)).toEqual([]);
    expect(finding('site-facts', { ...house, assumed }).reason).toMatch(/soil/);
  });
});
