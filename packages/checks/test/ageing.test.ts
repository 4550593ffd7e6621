import { type Evaluation, evaluate as judged } from '@tautline/checks';
import { agedFastener, agedFilm, agedInSoil, agedPvc, lifeInSoil } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import type { Response } from '@tautline/structure';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memberAgeing } from '../src/ageing.ts';
import { pressedIn } from '../src/checks/post-buckling.ts';
import { fastening, finding, onFeet, ridgedHouse, sidePosts, sprungHouse, withCover } from './houses.ts';

const year = 365.25 * 86_400;
const new2026 = '2026-09-01';
const dated: Shelter = withCover(ridgedHouse(), { installed: new2026, fastening: fastening(2000) });

const at = (shelter: Shelter, on?: string): Evaluation => judged(shelter, on === undefined ? {} : { on });
const useOf = (id: string, shelter: Shelter, on?: string): number =>
  at(shelter, on).findings.find((entry) => entry.id === id)?.utilisation ?? Number.NaN;

describe('strength left', () => {
  it('falls with age and to no less than a quarter', () => {
    const age = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(age, age, fc.double({ min: 0.5, max: 10, noNaN: true }), (a, b, life) => {
        const [young, old] = [Math.min(a, b) * year, Math.max(a, b) * year];
        expect(agedFilm(old, life * year).share).toBeLessThanOrEqual(agedFilm(young, life * year).share);
        expect(agedFilm(old, life * year).share).toBeGreaterThanOrEqual(0.25);
        for (const fibre of ['polyester', 'polypropylene', 'nylon', undefined] as const) {
          const [first, last] = [young, old].map((t) => agedFastener(fibre, t, life * year).share);
          expect(last).toBeLessThanOrEqual(first! + 1e-12);
          expect(last).toBeGreaterThanOrEqual(0.25);
        }
        expect(agedInSoil('bamboo', false, old)!.share).toBeLessThanOrEqual(
          agedInSoil('bamboo', false, young)!.share,
        );
      }),
    );
  });

  it('is a half at the end of a life, and all of it when new', () => {
    expect(agedFilm(4 * year, 4 * year).share).toBeCloseTo(0.5, 12);
    expect(agedFilm(0, 4 * year).share).toBe(1);
    expect(agedInSoil('timber', false, lifeInSoil('timber', false)!)!.share).toBeCloseTo(0.5, 12);
  });

  it('stays whole in treated wood, in steel, and in PVC in the sun', () => {
    expect(agedInSoil('timber', true, 9 * year)).toBe(undefined);
    expect(agedInSoil('steel', false, 9 * year)).toBe(undefined);
    expect(agedPvc(9 * year).share).toBe(1);
  });

  it('is asked for with an age and a life', () => {
    expect(() => agedFilm(-1, year)).toThrow(RangeError);
    expect(() => agedFilm(1, 0)).toThrow(RangeError);
  });
});

describe('straps and clips that were dated', () => {
  const strap = { ...fastening(2000), form: 'strap', life: 3 * year } as const;
  const strapped = (since?: string): Shelter =>
    withCover(ridgedHouse(), {
      installed: new2026,
      fastening: fastening(2000),
      straps: { item: strap, spacing: 1.2, ...(since === undefined ? {} : { since }) },
    });
  const strapUse = (shelter: Shelter, on: string): number =>
    at(shelter, on).findings.find(({ id, part }) => id === 'fastening-pull' && part.endsWith('/straps'))!
      .utilisation!;

  it('may be pulled half at the end of their life, counted from their own day where that is said', () => {
    const fresh = strapUse(strapped(), new2026);
    expect(strapUse(strapped(), '2029-09-01') / fresh).toBeCloseTo(2, 2);
    expect(strapUse(strapped('2029-09-01'), '2029-09-01') / fresh).toBeCloseTo(1, 9);
  });

  it('of a metal channel stay as they are, of clips fall below what the film allows', () => {
    const clip = { ...fastening(2000), life: year };
    const clipped = withCover(ridgedHouse(), { installed: new2026, fastening: clip });
    const on = '2027-09-01';
    // Film of a life of 4 years has 0.5^(1/4) left after one, the clip a half.
    expect(useOf('fastening-pull', clipped, on) / useOf('fastening-pull', dated, on)).toBeCloseTo(
      0.5 ** 0.25 / 0.5,
      2,
    );
  });

  it('go at a lower gust in the order of failure', () => {
    const gustOf = (on: string): number =>
      at(strapped(), on).gusts!.failures.find(
        ({ what }) => what.endsWith('gives') && /strap|Fast/i.test(what),
      )!.gust;
    expect(gustOf('2029-09-01')).toBeLessThan(0.8 * gustOf(new2026));
  });
});

describe('film that was dated', () => {
  it('may be pulled less every year, and so may its edge', () => {
    for (const id of ['film-stress', 'fastening-pull']) {
      const uses = ['2026-09-01', '2027-09-01', '2029-09-01', '2032-09-01'].map((on) => useOf(id, dated, on));
      for (const [index, use] of uses.entries()) {
        if (index > 0) expect(use, id).toBeGreaterThan(uses[index - 1]!);
      }
      // Film of a life of 4 years, 3 years old: 0.5^(3/4) is left.
      const life = (dated.covers[0]!.skin as { life: number }).life;
      expect(uses[2]! / uses[0]!).toBeCloseTo(1 / agedFilm(3 * year, life).share, 2);
    }
  });

  it('shows its age and what is left as steps', () => {
    const told = at(dated, '2029-09-01').findings.find(({ id }) => id === 'film-stress')!;
    const left = told.steps.find(({ symbol }) => symbol === 'η')!;
    expect(left.source).toBe('en13206:life');
    expect(left.inputs.map(({ symbol }) => symbol)).toEqual(['t', 't_life']);
    expect(told.capacity!.value).toBeCloseTo(told.steps.at(-1)!.value, 6);
  });

  it('comes off at a lower gust', () => {
    const gust = (on: string): number =>
      at(dated, on).gusts!.failures.find(({ check }) => check === 'fastening-pull')!.gust;
    expect(gust('2029-09-01')).toBeLessThan(gust('2026-09-01'));
  });

  it('is reckoned as new, and that is said, where a day is missing or to come', () => {
    const { installed: _day, ...undated } = dated.covers[0]!;
    const cases = [at({ ...dated, covers: [undated] }, '2029-09-01'), at(dated), at(dated, '2026-01-01')];
    for (const evaluation of cases) {
      expect(evaluation.notChecked.some(({ reason }) => /as strong as new/.test(reason))).toBe(true);
      expect(evaluation.findings.find(({ id }) => id === 'film-stress')!.utilisation).toBeCloseTo(
        useOf('film-stress', dated, new2026),
        9,
      );
    }
    expect(at(dated, '2029-09-01').notChecked.some(({ reason }) => /as new/.test(reason))).toBe(false);
  });
});

describe('what stands in the soil', () => {
  const house = onFeet(sprungHouse(), { kind: 'driven' });
  const roof = house.roof as Extract<Shelter['roof'], { type: 'bows' }>;
  const of = (family: 'timber' | 'steel' | 'pvc', treated = false): Shelter => ({
    ...house,
    built: '2024-11-25',
    roof: { ...roof, member: { ...roof.member, material: { ...roof.member.material, family, treated } } },
  });
  const shares = (shelter: Shelter, on: string): readonly number[] => {
    const { member, foot, line } = shelter.roof as typeof roof;
    const total = line.at(-1)!.s;
    const ageing = memberAgeing(shelter, on, member, foot, total);
    return [0, total / 2, total].map(ageing.shareAt);
  };

  it('rots at its feet and not at its crown', () => {
    const [left, crown, right] = shares(of('timber'), '2028-11-25');
    expect(left).toBeCloseTo(0.5, 2);
    expect(crown).toBe(1);
    expect(right).toBe(left);
  });

  it('keeps its strength treated, of steel, of PVC, and before it was built', () => {
    for (const shelter of [of('timber', true), of('steel'), of('pvc')])
      expect(shares(shelter, '2034-11-25')).toEqual([1, 1, 1]);
    expect(shares(of('timber'), '2020-11-25')).toEqual([1, 1, 1]);
  });

  it('is said to be reckoned as sound where the day of building was not said', () => {
    const { built: _day, ...undated } = of('timber');
    expect(at(undated, '2028-11-25').notChecked.some(({ reason }) => /sound/.test(reason))).toBe(true);
    expect(at(of('timber'), '2028-11-25').notChecked.some(({ reason }) => /sound/.test(reason))).toBe(false);
    expect(finding('over-span', of('timber')).verdict).not.toBe('not checked');
  });

  it('bends what is left of a post near the soil by as much more, and leaves its head as it is', () => {
    const posts = { ...sidePosts(2, 1.2), id: 'side-posts' };
    const shelter = { ...house, built: '2024-11-25', sidePosts: posts };
    const ageing = memberAgeing(shelter, '2028-11-25', posts.member, posts.foot);
    const force = { element: 0, part: posts.id, axial: -100, moment: 50, shear: 0 };
    const response = {
      load: { title: 'gust', duration: 'gust' },
      forces: [
        { ...force, at: 0 },
        { ...force, at: 2 },
      ],
    } as unknown as Response;
    const [foot, head] = pressedIn(posts, response, ageing);
    expect(foot!.bending / head!.bending).toBeCloseTo(2, 1);
    expect(foot!.aged).toHaveLength(1);
    expect(head!.aged).toEqual([]);
    expect(foot!.thrust).toBe(head!.thrust);
  });
});
