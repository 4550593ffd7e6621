import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  criticalPondingStiffness,
  type PlaneModel,
  type PondingAnswer,
  pondingPath,
  solvePlaneFrame,
  WATER,
} from '../src/index.ts';
import { level, sprungBow } from './frames.ts';

const [L, b] = [6, 1.2];
const whole = (model: PlaneModel) => ({ elements: model.elements.map((_, k) => k), breadth: b });
const limit = criticalPondingStiffness(WATER, b, L);
const sag = 0.02;
/** A level beam `times` as stiff as where it ponds without end. */
const beam = (times: number): PondingAnswer => {
  const model = level(L, 12, times * limit);
  return pondingPath(model, whole(model), undefined, { sag });
};
/** A pipe sprung into an arch, with film that may sag. */
const arch = (sagging: number, stiffer = 1): PondingAnswer => {
  const bow = sprungBow(32);
  const model = { ...bow, elements: bow.elements.map((e) => ({ ...e, EI: stiffer * e.EI })) };
  return pondingPath(model, whole(model), solvePlaneFrame(model, {}).state, { sag: sagging });
};
/** A line drawn through heights a metre apart, its two ends and its crowns held. */
const drawn = (heights: readonly number[], held: readonly number[]): PlaneModel => ({
  nodes: heights.map((y, x) => ({ x, y })),
  elements: heights.slice(1).map((_, i) => ({ i, j: i + 1, EA: 1e8, EI: 1e6 })),
  supports: [
    { node: 0, dof: 'x', kind: 'fixed' },
    ...held.map((node) => ({ node, dof: 'y', kind: 'fixed' }) as const),
  ],
});

describe('ponding path', () => {
  it('a stiff beam holds what the film alone holds: two thirds along and two thirds across of sag, width and breadth', () => {
    const { verdict, rest, first } = beam(1e4);
    expect(verdict).toBe('comes to rest');
    expect(first?.volume).toBeCloseTo((4 / 9) * sag * L * b, 9);
    expect((rest?.volume ?? 0) / ((4 / 9) * sag * L * b)).toBeCloseTo(1, 3);
    expect(rest?.depth).toBeCloseTo(sag, 4);
    expect(rest?.at).toBeCloseTo(L / 2, 6);
  });

  it('water pushes down with its own weight, and its loads on the members come to it', () => {
    const { rest } = beam(2);
    expect(rest!.reactions[1]! + rest!.reactions[2]!).toBeCloseTo(WATER * rest!.volume, 3);
    const model = level(L, 12, limit);
    const laid = rest!.state.loads.line!.reduce((sum, { wy }) => sum - wy * (L / model.elements.length), 0);
    expect(laid).toBeCloseTo(WATER * rest!.volume, 3);
  });

  it('the pond is as deep as the film hangs and the beam has sunk', () => {
    const { rest } = beam(2);
    expect(rest!.depth).toBeCloseTo(sag - rest!.state.displacements[3 * 6 + 1]!, 5);
  });

  it('the softer the beam, the more it holds, until it runs away', () => {
    const answers = [8, 4, 2, 1.2, 0.6].map(beam);
    expect(answers.map((one) => one.verdict)).toEqual([...Array(4).fill('comes to rest'), 'runs away']);
    for (let k = 1; k < 4; k++)
      expect(answers[k]!.rest!.volume).toBeGreaterThan(answers[k - 1]!.rest!.volume);
    expect(answers[4]!.rest).toBeUndefined();
  });

  it('a limber arch that gives way is not found at rest upside down', () => {
    const { verdict, path, first } = arch(0.12);
    expect(verdict).toBe('runs away');
    // no step of the path has the water below the feet, 4 m apart under a rise of some 2 m
    expect(Math.min(...path.map(({ level: height }) => height))).toBeGreaterThan(0.8 * (first?.level ?? 0));
  });

  it('an arch under tight film drains; so does a tilted beam', () => {
    expect(arch(0).verdict).toBe('drains');
    const flat = level(L, 12, 2 * limit);
    const tilted = { ...flat, nodes: flat.nodes.map((p) => ({ x: p.x, y: 0.2 * p.x })) };
    expect(pondingPath(tilted, whole(tilted), undefined, { sag: 0.02 }).verdict).toBe('drains');
  });

  it('on an arch of radius R the film holds most over b² = R f / 2 to either side: 3/4 f deep (derived)', () => {
    const [R, f, parts] = [2, 0.1, 96];
    const nodes = Array.from({ length: parts + 1 }, (_, k) => {
      const x = 2 * (k / parts - 0.5);
      return { x, y: -(x * x) / (2 * R) };
    });
    const ends = [0, parts].flatMap((node) => [
      { node, dof: 'x', kind: 'fixed' } as const,
      { node, dof: 'y', kind: 'fixed' } as const,
    ]);
    const rigid: PlaneModel = {
      nodes,
      elements: nodes.slice(1).map((_, i) => ({ i, j: i + 1, EA: 1e9, EI: 1e7 })),
      supports: ends,
    };
    const { first } = pondingPath(rigid, whole(rigid), undefined, { sag: f });
    const half = Math.sqrt((R * f) / 2);
    expect(first!.depth / (0.75 * f)).toBeCloseTo(1, 1);
    expect((first!.to - first!.from) / (2 * half)).toBeCloseTo(1, 1);
    expect(first!.volume / ((8 / 9) * 0.75 ** 1.5 * f * half * b)).toBeCloseTo(1, 2);
  });

  it('a line with a hollow of its own holds water without any film', () => {
    const hollow = drawn([1, 0, 0, 1], [0, 3]);
    const { first } = pondingPath(hollow, whole(hollow));
    // a trapezoid 3 m over 1 m, 1 m deep
    expect(first?.volume).toBeCloseTo(2 * b, 9);
  });

  it('fills each hollow by itself and adds what comes to rest', () => {
    const two = drawn([1, 0, 0, 1, 0.2, 0.2, 1], [0, 3, 6]);
    const { rest, together } = pondingPath(two, whole(two));
    expect(rest!.volume / (2 * b)).toBeGreaterThan(0.75);
    expect(together / (2 * b)).toBeGreaterThan(1.7);
    expect(together).toBeGreaterThan(rest!.volume);
  });

  it('stops when called off, and says what is wrong with a line', () => {
    const model = level(L, 12, 2 * limit);
    expect(pondingPath(model, whole(model), undefined, { sag, cancelled: () => true }).verdict).toBe(
      'cancelled',
    );
    const broken = pondingPath(model, { elements: [0, 5], breadth: b });
    expect(broken.verdict).toBe('no answer');
    expect(broken.reason).toContain('continuous');
  });
});

describe('properties of ponding', () => {
  it('the reserve is above 1 just when the pond comes to rest, which stands just up to its brim', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.16, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (hang, stiffer) => {
          const { verdict, reserve, rest, path } = arch(hang, stiffer);
          if (verdict === 'drains') return;
          expect(verdict).toBe(reserve >= 1 ? 'comes to rest' : 'runs away');
          expect(Math.max(...path.map(({ volume, holds }) => volume / holds))).toBeGreaterThanOrEqual(
            reserve,
          );
          if (rest) {
            const weight = rest.state.loads.line!.reduce((sum, { wy }) => sum - wy * (6 / 32), 0);
            expect(weight / (WATER * rest.volume)).toBeCloseTo(1, 9);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('more stiffness never makes the reserve worse', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.16, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: 1.15, max: 3, noNaN: true }),
        (hang, stiffer, more) => {
          const [soft, stiff] = [arch(hang, stiffer), arch(hang, stiffer * more)];
          // the reserve is found to the width of a step
          if (!soft.atLeast) expect(stiff.reserve).toBeGreaterThan(0.95 * soft.reserve);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('a line and its mirror image pond alike', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 5, maxLength: 9 }),
        (centimetres) => {
          const heights = centimetres.map((height) => height / 100);
          const ends = [0, heights.length - 1];
          const held = (line: readonly number[]): PondingAnswer => {
            const frame = drawn(line, ends);
            const stiff = { ...frame, elements: frame.elements.map((e) => ({ ...e, EA: 1e10, EI: 1e9 })) };
            return pondingPath(stiff, whole(stiff));
          };
          const [here, there] = [held(heights), held([...heights].reverse())];
          expect(there.verdict).toBe(here.verdict);
          expect(there.together).toBeCloseTo(here.together, 3);
        },
      ),
      { numRuns: 60 },
    );
  });
});
