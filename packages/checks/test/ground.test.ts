import { groundAllowedAt, lateralCapacity, postEmbedmentLateral } from '@tautline/loads';
import type { Posts, Shelter } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { footUplift } from '../src/ground.ts';
import { footMoment, footSideways } from '../src/ground-sideways.ts';
import { footSinking } from '../src/ground-sinking.ts';
import {
  finding,
  findings,
  onFeet,
  origin,
  pipe,
  postStock,
  ridgedHouse,
  sprungHouse,
  steel,
  use,
} from './houses.ts';

const house = sprungHouse();
const { site } = house;
const push = { push: 200, moment: 200, lift: 0, stay: 'season' as const };

describe('feet sideways', () => {
  it('take the thrust of the sprung bow even without wind', () => {
    const calm = { ...house, site: { ...site, gust: 1 } };
    expect(finding('lateral-foot', calm).demand?.value).toBeGreaterThan(1);
  });

  it('never hold less the deeper they go (from some depth on the stub itself bends first)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1.2, noNaN: true }), (driven) => {
        const shallow = use('lateral-foot', onFeet(house, { driven }));
        const deep = use('lateral-foot', onFeet(house, { driven: driven + 0.2 }));
        expect(deep).toBeLessThanOrEqual(shallow + 1e-9);
      }),
      { numRuns: 4 },
    );
  });

  it('count for a post in its hole on the larger of two published allowances, both in the steps', () => {
    const foot = { id: 'f', origin, kind: 'hole', driven: 0.9, fixity: 'clamped' } as const;
    const side = 3.5 * 0.0254;
    const post = { depth: 0.9, height: 1 } as const;
    for (const soil of ['loam', 'sand', 'clay-stiff'] as const) {
      const table = postEmbedmentLateral({
        soil,
        width: side * Math.SQRT2,
        constrained: false,
        ...post,
      });
      const broms = lateralCapacity({
        soil,
        diameter: side,
        head: 'free',
        waterlogged: true,
        backfilled: true,
        ...post,
      });
      for (const [stay, times] of [
        ['season', 1],
        ['gust', 2],
      ] as const) {
        const hold = footSideways(foot, postStock, { ...site, soil }, { ...push, stay });
        if ('reason' in hold) throw new Error(hold.reason);
        expect(groundAllowedAt(hold, 'asce7-asd')).toBeCloseTo(
          Math.max(times * table.allowable, broms.capacity / 2.5),
          6,
        );
        expect(hold.steps.map(({ symbol }) => symbol)).toEqual(expect.arrayContaining(['H_B', 'P_a', 'H_a']));
      }
    }
  });

  it('hold more in ground that drains than in soaked ground, down, sideways and against sinking', () => {
    const drained = { ...site, soaked: false };
    for (const kind of ['driven', 'hole', 'concrete'] as const) {
      const foot = { id: 'f', origin, kind, driven: 0.9, across: 0.3, fixity: 'clamped' } as const;
      const both = [site, drained].map((one) => {
        const up = footUplift(foot, postStock, one, 'gust');
        const over = footSideways(foot, postStock, one, { ...push, stay: 'gust' });
        const down = footSinking(foot, postStock, one, undefined);
        if ('reason' in up || 'reason' in over || 'reason' in down) throw new Error('no hold');
        return [up.allowable, over.allowable, down.allowed, up.expected.median, over.expected.median];
      });
      both[0]!.forEach((soaked, n) => {
        expect(both[1]![n]!).toBeGreaterThanOrEqual(soaked * (1 - 1e-9));
      });
      expect(both[1]![0]! / both[0]![0]!).toBeGreaterThan(1.3);
    }
  });

  it('can hold no bending that their depth does not', () => {
    const foot = (driven: number) => ({ id: 'f', origin, kind: 'hole', driven, fixity: 'clamped' }) as const;
    const [shallow, deep] = [0.3, 0.9].map((driven) => footMoment(foot(driven), postStock, site, 'gust')!);
    expect(shallow).toBeLessThan(0.2 * deep!);
    const hold = footSideways(foot(0.3), postStock, site, { ...push, push: 1e-3, moment: shallow! });
    if ('reason' in hold) throw new Error(hold.reason);
    // Held clamped with all its depth can give: the push that goes with it is used up.
    expect(1e-3 / footSidewaysGust(0.3, shallow!)).toBeCloseTo(1, 2);
  });

  const footSidewaysGust = (driven: number, moment: number): number => {
    const foot = { id: 'f', origin, kind: 'hole', driven, fixity: 'clamped' } as const;
    const hold = footSideways(foot, postStock, site, { push: 1e-3, moment, lift: 0, stay: 'gust' });
    if ('reason' in hold) throw new Error(hold.reason);
    return hold.allowable;
  };

  it('that hold next to nothing are told in words and not by a share of nothing', () => {
    const found = finding('pull-out', onFeet(house, { kind: 'bearing', driven: 0, across: 0.3 }));
    expect(found.utilisation).toBeLessThanOrEqual(100);
    expect(found.message.join('')).toContain('cannot be counted on');
  });

  it.each(['screw', 'deadman'] as const)('are not checked on a %s, with the reason', (kind) => {
    const found = finding('lateral-foot', onFeet(house, { kind, across: 0.1 }));
    expect(found.verdict).toBe('not checked');
    expect(found.reason).toMatch(/sideways/);
  });

  it('slide by friction on ballast: H = μ (m g - U) in sand', () => {
    const foot = { id: 'f', origin, kind: 'ballast', driven: 0, mass: 100, fixity: 'pinned' } as const;
    const hold = footSideways(foot, postStock, { ...site, soil: 'sand' }, { ...push, lift: 380.665 });
    if ('reason' in hold) throw new Error(hold.reason);
    // IBC table 1806.2: friction 0.25 on sand.
    expect(hold.allowable).toBeCloseTo(0.25 * (980.665 - 380.665), 6);
  });
});

describe('feet sinking', () => {
  const pad = { id: 'f', origin, kind: 'bearing', driven: 0, across: 0.3, fixity: 'pinned' } as const;

  it('never counts on more than the presumptive pressure of the soil', () => {
    const hold = footSinking(pad, postStock, site, undefined);
    if ('reason' in hold) throw new Error(hold.reason);
    // IBC table 1806.2, clay and silt class: 1500 psf.
    expect(hold.allowed).toBeLessThanOrEqual((1500 * 47.880259 * Math.PI * 0.3 ** 2) / 4 + 1e-6);
  });

  it('is not checked on a pad of unknown size', () => {
    const { across: _, ...unsaid } = pad;
    expect(footSinking(unsaid, postStock, site, undefined)).toHaveProperty('reason');
  });

  it('looks at the posts under a ridge as well as at the bows', () => {
    const shelter = ridgedHouse();
    expect(findings('foot-bearing', shelter).map((found) => found.part)).toEqual([
      'bows/foot',
      'ridge/posts/foot',
    ]);
  });

  it('counts what fills a ridge post, by hand', () => {
    const hollow = pipe('pipe', steel, 0.1, 0.005, [6]);
    const house = (filled: Partial<Posts>): Shelter => {
      const shelter = ridgedHouse();
      const { ridge } = shelter;
      return { ...shelter, ridge: { ...ridge!, posts: { ...ridge!.posts!, member: hollow, ...filled } } };
    };
    const load = (shelter: Shelter, check: string, part: string): number =>
      findings(check, shelter).find((found) => found.part === part)!.demand!.value;
    const full = house({ filled: { upTo: 1.2, with: 'concrete' } });
    // Bore 90 mm, 1.2 m of concrete at 2300 kg/m3.
    const more = (Math.PI / 4) * 0.09 ** 2 * 1.2 * 2300 * 9.80665;
    for (const [check, part] of [
      ['foot-bearing', 'ridge/posts/foot'],
      ['post-buckling', 'ridge/posts'],
    ] as const)
      expect(load(full, check, part) - load(house({}), check, part)).toBeCloseTo(more, 4);
  });
});
