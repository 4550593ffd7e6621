/** Crowns as built, filled pipe, film on its frames, prices. */
import type { Filled, Item, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { checkOf } from '../src/registry.ts';
import { runCheck } from '../src/run-check.ts';
import {
  finding,
  findings,
  inputOf,
  pipe,
  postStock,
  pvc,
  sidePosts,
  sprungHouse,
  withCover,
} from './houses.ts';

const house = sprungHouse();

describe('a flat crown', () => {
  const flat = (rise: number): number => finding('flat-crown', sprungHouse({ rise })).demand!.value;

  it('is about 2 R sin(atan 1:10) wide on a shallow arch', () => {
    const shelter = sprungHouse({ rise: 0.5 });
    const crown = shelter.roof.line.reduce((best, point) => (point.y > best.y ? point : best));
    const round = (2 / Math.abs(crown.curvature)) * Math.sin(Math.atan(0.1));
    expect(finding('flat-crown', shelter).demand!.value / round).toBeCloseTo(1, 1);
  });

  it('is wider on a lower arch, and fails on one that is nearly flat', () => {
    expect(flat(1)).toBeGreaterThan(flat(2));
    expect(finding('flat-crown', sprungHouse({ rise: 0.25 })).verdict).toBe('fails');
    expect(finding('flat-crown', house).verdict).toBe('passes');
  });
});

describe('filled pipe', () => {
  const post = pipe('post', pvc, 0.06, 0.004, [6]);
  const filled = (upTo: number, coldest = 5, member = post): Shelter => ({
    ...house,
    site: { ...house.site, coldest },
    sidePosts: { ...sidePosts(2, 2), member, filled: { upTo, with: 'concrete' } satisfies Filled },
  });

  it('holds π/4 (d - 2 t)² of water for each metre above its filling', () => {
    const [step] = finding('filled-pipe', filled(0.5)).steps;
    expect(step!.value).toBeCloseTo((Math.PI / 4) * 0.052 ** 2 * 1.5, 12);
  });

  it('splits where it freezes, and does not when it is full', () => {
    expect(finding('filled-pipe', filled(0.5)).verdict).toBe('near its limit');
    expect(finding('filled-pipe', filled(0.5, -3)).verdict).toBe('fails');
    expect(finding('filled-pipe', filled(2, -3)).verdict).toBe('passes');
  });

  it('is asked only of what is filled, and finds solid posts that cannot be', () => {
    expect(findings('filled-pipe', house)).toEqual([]);
    expect(finding('filled-pipe', filled(2, 5, postStock)).message.join('')).toMatch(/solid/);
  });
});

describe('film on PVC', () => {
  const aged = (on: string | undefined, wrapped = false) => {
    const { roof } = house;
    if (roof.type !== 'bows') throw new Error('no bows');
    const shelter = withCover({ ...house, roof: { ...roof, wrapped } }, { installed: '2024-01-01' });
    const { on: _, ...input } = inputOf(shelter);
    const [found] = runCheck(checkOf('hot-contact')!, on === undefined ? input : { ...input, on });
    return found!;
  };

  it('keeps half of its life', () => {
    expect(aged('2025-01-01').utilisation).toBeCloseTo(366 / (2 * 365.25), 4);
    expect(aged('2026-02-01').verdict).toBe('fails');
  });

  it('warns without a day, and is content once wrapped', () => {
    expect(aged(undefined).verdict).toBe('near its limit');
    expect(aged('2026-02-01', true).verdict).toBe('passes');
  });
});

describe('cutting waste', () => {
  const { roof } = house;
  if (roof.type !== 'bows') throw new Error('no bows');
  /** The house whose bows are cut, in one piece each, from lengths of so many times their own. */
  const from = (times: number): Shelter => ({
    ...house,
    roof: { ...roof, joints: [], member: { ...roof.member, stockLengths: [times * roof.length] } },
  });

  it('is what is left of a length after as many bows as come out of it', () => {
    expect(finding('cut-waste', from(2.2)).demand!.value).toBeCloseTo(0.2 / 2.2, 9);
    expect(finding('cut-waste', from(3)).demand!.value).toBeCloseTo(0, 9);
  });

  it('fails where bows are just longer than half a length, and is not asked where they come out of none', () => {
    expect(finding('cut-waste', from(1.9))).toMatchObject({ verdict: 'fails', severity: 'warning' });
    expect(findings('cut-waste', from(0.9))).toEqual([]);
  });
});

describe('prices', () => {
  const priced = <T extends Item>(item: T): T => ({
    ...item,
    prices: [{ amount: 4, per: { unit: 'piece', value: 1 }, origin: item.origin }],
  });
  const { roof } = house;
  if (roof.type !== 'bows') throw new Error('no bows');
  const some: Shelter = { ...house, roof: { ...roof, member: priced(roof.member) } };

  it('are asked for only where some are known', () => {
    expect(findings('missing-price', house)).toEqual([]);
  });

  it('are told where they are missing, and found wherever an item is used', () => {
    const found = finding('missing-price', some);
    expect(found).toMatchObject({ verdict: 'fails', severity: 'warning' });
    const [skin] = house.covers.map((cover) => cover.skin);
    expect(found.message.join('')).toContain(skin!.id);
    const bought = withCover(some, { skin: priced(skin!) });
    const left = finding('missing-price', bought);
    expect(left.steps[0]!.value).toBe(found.steps[0]!.value - 1);
  });
});
