/** Joints by their kind, cables in the heat and at their ends, and places where one member lies on another. */
import type { Acceptance, CableItem, JointItem, MemberItem, Rail, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../src/index.ts';
import {
  brace,
  finding,
  findings,
  origin,
  pipe,
  pipeRidge,
  postStock,
  pvc,
  ridgedHouse,
  sidePosts,
  sprungHouse,
  steel,
  use,
  withMember,
} from './houses.ts';

const house = sprungHouse();
const crown = 2.286;

const joint = (more: Partial<JointItem> = {}): JointItem => ({
  ...{ kind: 'coupler', id: 'joint', title: 'joint', source: 'test', origin, prices: [] },
  ...{ form: 'socket', momentCapacity: 50, pullCapacity: 1000, insertion: 0.03 },
  ...more,
});

function joined(shelter: Shelter, item: JointItem): Shelter {
  const { roof } = shelter;
  if (roof.type !== 'bows') throw new Error('no bows');
  return { ...shelter, roof: { ...roof, joints: [{ id: 'joint-1', origin, item, at: 2, assumed: false }] } };
}

describe('joints by their kind', () => {
  const bamboo: MemberItem = { ...postStock, id: 'culm', material: { ...pvc, id: 'culm', family: 'bamboo' } };
  const verdict = (shelter: Shelter, item: JointItem): string =>
    finding('joint-kind', joined(shelter, item)).verdict;

  it('asks that a socket is made for its pipe', () => {
    expect(verdict(house, joint({ fits: ['emt-27'] }))).toBe('fails');
    expect(verdict(house, joint({ fits: ['pvc40-25', 'pvc80-25'] }))).toBe('passes');
    expect(verdict(house, joint())).toBe('passes');
    // A pipe of one's own that is as large outside as one of the catalogue.
    const own = withMember(house, { ...postStock, id: 'own', takenFor: ['emt-27'] });
    expect(verdict(own, joint({ fits: ['emt-27'] }))).toBe('passes');
    expect(verdict(own, joint({ fits: [postStock.id] }))).toBe('fails');
  });

  it('does not clamp or bolt bamboo, and lashes it', () => {
    const culms = withMember(house, bamboo);
    expect(verdict(culms, joint({ form: 'clamp' }))).toBe('fails');
    expect(verdict(culms, joint({ form: 'bolt' }))).toBe('fails');
    expect(verdict(culms, joint({ form: 'lashing', fits: ['other'] }))).toBe('passes');
  });

  it('does not cut a sprung pipe at its crown', () => {
    const { roof } = house;
    if (roof.type !== 'bows') throw new Error('no bows');
    const crownFitting = { id: 'crown', origin, item: joint({ form: 'cross' }), at: 3, assumed: false };
    expect(finding('joint-kind', { ...house, roof: { ...roof, crownFitting } }).verdict).toBe('fails');
    expect(finding('joint-kind', { ...house, roof: { ...roof, shape: 'arc', crownFitting } }).verdict).toBe(
      'passes',
    );
  });

  it('says nothing where there are no joints', () => {
    expect(findings('joint-kind', house)).toEqual([]);
  });
});

describe('cables', () => {
  const rope: CableItem = {
    ...{ kind: 'cable', id: 'rope', title: 'rope', source: 'test', origin, prices: [] },
    ...{ diameter: 0.006, breakingLoad: 22_900, modulus: 100e9, area: 16.9e-6, massPerLength: 0.146 },
  };
  const ridge = (tension: number, driven: number): Rail => {
    const { joint: _, ...rail } = pipeRidge(crown, 3);
    return {
      ...rail,
      form: 'cable',
      member: rope,
      tension,
      posts: { ...sidePosts(crown, 3), id: 'ridge/posts', where: 'centre', lines: [house.width / 2] },
      endAnchor: { id: 'ridge/anchor', origin, kind: 'deadman', driven, across: 0.3, fixity: 'pinned' },
    };
  };
  const on = (tension: number, driven = 1): Shelter => sprungHouse({ ridge: ridge(tension, driven) });

  it('lose E A α for every degree above the day they are pulled up', () => {
    const lost = 100e9 * 16.9e-6 * 12e-6 * (house.site.hottest - 20);
    const found = finding('cable-slack', on(2000));
    expect(found.demand!.value).toBeCloseTo(lost, 6);
    expect(found.utilisation).toBeCloseTo(lost / 2000, 9);
    expect(use('cable-slack', on(4000))).toBeCloseTo(lost / 4000, 9);
  });

  it('are not told where nobody says their pull', () => {
    const braced = {
      ...house,
      braces: [brace({ member: rope }), brace({ id: 'b', role: 'guy', member: rope })],
    };
    expect(finding('cable-slack', braced).reason).toMatch(/wire braces and the guys/);
    expect(findings('cable-slack', { ...house, braces: [brace()] })).toEqual([]);
  });

  it('lift their end anchors with their level pull at 45°, and deeper anchors hold more', () => {
    const found = finding('cable-anchor', on(4000));
    const [stay] = found.steps;
    expect(found.demand!.value).toBeCloseTo(stay!.value * Math.sin(Math.PI / 4), 9);
    expect(found.demand!.value).toBeGreaterThan(4000);
    expect(use('cable-anchor', on(4000, 1.4))).toBeLessThan(found.utilisation!);
    expect(findings('cable-anchor', ridgedHouse())).toEqual([]);
  });
});

describe('members that lie on each other', () => {
  const rail = (member: MemberItem): Rail => ({ ...pipeRidge(crown, 2.4), member });

  it('press the ridge on its posts with what foot-bearing finds there, less the post', () => {
    const found = findings('beam-bearing', ridgedHouse()).find(({ part }) => part === 'ridge');
    const posts = ridgedHouse().ridge!.posts!;
    const below = findings('foot-bearing', ridgedHouse()).find(({ part }) => part === posts.foot.id);
    expect(found!.demand!.value).toBeLessThan(below!.demand!.value);
    expect(found!.demand!.value).toBeGreaterThan(0.3 * below!.demand!.value);
  });

  it('stand four times as much with twice the wall, but for the length of contact', () => {
    const capacity = (wall: number): number => {
      const shelter = sprungHouse({ ridge: rail(pipe('tube', steel, 0.06, wall, [6])) });
      return findings('beam-bearing', shelter).find(({ part }) => part === 'ridge')!.capacity!.value;
    };
    expect(capacity(0.004) / capacity(0.002)).toBeCloseTo(4, 6);
  });

  it('do not ask of wood whose strength across the grain nobody knows', () => {
    const shelter = sprungHouse({ ridge: rail(postStock) });
    const known = { ...postStock, material: { ...postStock.material, bearingStrength: 2.2e6 } };
    const verdicts = (one: Shelter): string[] => findings('beam-bearing', one).map(({ verdict }) => verdict);
    expect(verdicts(shelter)).toContain('not checked');
    expect(verdicts(sprungHouse({ ridge: rail(known) }))).not.toContain('not checked');
  });
});

describe('lines that accept', () => {
  const acceptance = (check: string): Acceptance => ({
    ...{ id: 'accept-1', origin, check, because: 'so it is' },
  });

  it('are findings with a page of their own once nothing is left to accept', () => {
    const { findings: told } = evaluate({ ...house, acceptances: [acceptance('rot')] }, { gusts: false });
    const [outdated] = told.filter(({ id }) => id === 'stale-acceptance');
    expect(outdated).toMatchObject({ part: 'accept-1', verdict: 'fails', nature: 'paperwork' });
    expect(outdated!.steps[0]!.value).toBe(0);
  });

  it('stand as long as they cover something', () => {
    const failing = evaluate(house, { gusts: false }).findings.find(({ severity }) => severity === 'error')!;
    const { findings: told } = evaluate(
      { ...house, acceptances: [acceptance(failing.id)] },
      { gusts: false },
    );
    expect(told.some(({ id }) => id === 'stale-acceptance')).toBe(false);
  });
});
