import type { CableItem, Rail, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { analyseFrame, analyseHouse, frameView, ridgeStiffness } from '../src/index.ts';
import { foot, pipe, pipeRidge, postStock, pvc, site, sprungHouse } from './fixtures.ts';

const cable: CableItem = {
  kind: 'cable',
  id: 'strand',
  title: 'strand',
  source: 'test',
  origin: site.origin,
  prices: [],
  diameter: 0.009,
  breakingLoad: 50e3,
  modulus: 150e9,
  area: 40e-6,
  massPerLength: 0.35,
};

/** A sprung house of five bows on a cable over three posts, pulled to a tension (N). */
function onCable(tension: number): Shelter {
  const spacing = 1.2;
  const rail = pipeRidge(2.286, 2 * spacing);
  const { posts } = rail;
  if (posts === undefined) throw new Error('posts');
  const ridge: Rail = {
    ...rail,
    form: 'cable',
    member: cable,
    tension,
    posts: { ...posts, stations: [0, 2 * spacing, 4 * spacing] },
  };
  const base = sprungHouse({ ridge, spacing, member: pipe('stout', pvc, foot(1.9), foot(0.145), [9]) });
  const { roof } = base;
  if (roof.type !== 'bows') throw new Error('bows');
  return {
    ...base,
    length: 4 * spacing,
    roof: {
      ...roof,
      stations: [0, 1, 2, 3, 4].map((k) => k * spacing),
      foot: { ...roof.foot!, fixity: 'clamped' },
    },
  };
}

describe('ends of a ridge cable', () => {
  const shelter = onCable(5000);
  const plane = analyseFrame(shelter);
  const house = analyseHouse(shelter);
  if (!plane.ok || !house.ok) throw new Error('no answer');
  const typical = plane.analysis.ridge!;
  const view = frameView(shelter, plane.analysis, house.house, 2).ridge!;

  it('press the end posts down with about the whole pull, and meet it at 45 degrees', () => {
    for (const end of typical.ends ?? []) {
      expect(end.stay).toBeCloseTo(Math.SQRT2 * end.pull, 6);
      expect(end.down).toBeGreaterThan(0.9 * end.pull);
      expect(end.pull).toBeGreaterThanOrEqual(5000);
    }
    const durations = typical.ends!.map(({ duration }) => duration);
    expect(durations).toContain('permanent');
    expect(durations).toContain('gust');
    expect(new Set(durations).size).toBe(durations.length);
    expect(typical.post.down).toBeLessThan(1000);
  });

  it('are the same in the typical frame and in the whole house, within 10 %', () => {
    for (const end of typical.ends!) {
      const same = view.ends!.find(({ duration }) => duration === end.duration)!;
      expect(Math.abs(same.down - end.down)).toBeLessThan(0.1 * end.down);
      expect(Math.abs(same.stay - end.stay)).toBeLessThan(0.1 * end.stay);
    }
  });

  it('stand plumb while nothing but the pull acts: the ground gives the end posts the pull, by statics', () => {
    const { system, result } = house.house.states.built;
    const foot = shelter.ridge?.posts?.foot.id;
    const up = system.supports.flatMap(({ acts, part, node }, k) =>
      acts === 'y' && part === foot && system.nodes[node]!.z === 0 ? [result.reactions[k]!] : [],
    );
    const stay = system.elements.findIndex((element) => element.role === 'anchor');
    expect(up).toHaveLength(1);
    // What the stay presses, less what the sprung bow tied to the same post lifts.
    expect(up[0]! / (result.elementForces[stay]!.axial * Math.SQRT1_2)).toBeGreaterThan(0.9);
    expect(up[0]! / (result.elementForces[stay]!.axial * Math.SQRT1_2)).toBeLessThan(1.1);
  });
});

describe('a ridge held sideways by its posts', () => {
  const stiff = { modulus: postStock.material.modulus, section: postStock.section };

  it('gives as its posts and what runs along, one behind the other', () => {
    const shelter = onCable(5000);
    const ridge = shelter.ridge!;
    const { sideways } = ridgeStiffness(shelter, ridge, 1);
    if (stiff.section.shape !== 'rectangle') throw new Error('rectangle');
    const { depth, breadth } = stiff.section;
    const post = (3 * stiff.modulus * ((breadth * depth ** 3) / 12)) / ridge.posts!.height ** 3;
    const perFrame = (post * shelter.roof.spacing) / ridge.posts!.spacing;
    const string = (8 * 5000 * shelter.roof.spacing) / ridge.span ** 2;
    expect(sideways / (1 / (1 / perFrame + 1 / string))).toBeCloseTo(1, 2);
  });
});
