/** What is used up in building: by measure first, and then by the whole bag, pack, roll or can. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buyText, type MaterialLine, materials, stockOnHand, takeoff } from '../src/index.ts';
import { bows, foot, joint, origin, per, pvc, rail, shelter, supply } from './fixture.ts';

const bag = supply('bag', 'concrete', { pack: 0.0117, prices: [per(4, 'piece')] });
const footed = (mix = bag) =>
  shelter({ roof: bows({ foot: { ...foot('concrete', 0.6, { across: 0.3 }), mix } }) });
const lineOf = (lines: readonly MaterialLine[], id: string): MaterialLine => {
  const found = lines.find((one) => one.item?.id === id);
  if (!found) throw new Error(`no line of ${id}`);
  return found;
};

describe('concrete by the bag', () => {
  it('22 holes less the bows in them, a tenth more, and then the next whole bag', () => {
    const line = lineOf(materials(footed()).lines, 'bag');
    const net = 22 * (Math.PI / 4) * (0.3 ** 2 - 0.034 ** 2) * 0.6;
    expect(line.total).toBeCloseTo(1.1 * net, 9);
    // 1.0131 m3 / 0.0117 = 86.6.
    expect(line).toMatchObject({ buy: 87, cost: 87 * 4 });
    expect(buyText(line, 'metric')).toBe('87 bags of 11.7 L');
  });

  it('bags on hand are not bought', () => {
    const hands = stockOnHand([{ item: 'bag', count: 80, origin }]);
    expect(lineOf(materials(footed(), hands).lines, 'bag')).toMatchObject({ fromHand: 80, buy: 7, cost: 28 });
    const more = stockOnHand([{ item: 'bag', count: 90, origin }]);
    expect(lineOf(materials(footed(), more).lines, 'bag')).toMatchObject({ fromHand: 87, buy: 0, cost: 0 });
  });

  it('ready mixed is priced by measure', () => {
    const mixed = supply('mixed', 'concrete', { prices: [per(200, 'volume', 1)] });
    const line = lineOf(materials(footed(mixed)).lines, 'mixed');
    expect(line.cost).toBeCloseTo(200 * line.total, 9);
    expect(line.buy).toBeUndefined();
  });

  it('is never short, and never a whole bag over', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), (pack) => {
        const line = lineOf(materials(footed({ ...bag, pack })).lines, 'bag');
        expect(line.buy! * pack).toBeGreaterThanOrEqual(line.total * (1 - 1e-6));
        expect((line.buy! - 1) * pack).toBeLessThan(line.total);
      }),
    );
  });
});

describe('a tied joint', () => {
  const twine = supply('twine', 'cord', { pack: 100, prices: [per(8, 'piece')] });
  const lashing = { ...joint('lash', 'lashing', 0.3), cordLength: 2, cord: twine };
  const tied = shelter({
    roof: bows({ joints: [{ id: 'bows/joint-1', origin, item: lashing, at: 5, assumed: false }] }),
    purlins: [rail({ id: 'purlins', role: 'purlin', lines: [{ x: 3, y: 2 }], joint: lashing })],
  });

  it('is counted, costs nothing itself, and takes its cord by the roll', () => {
    const { lines } = materials(tied);
    const joints = lineOf(lines, 'lash');
    expect(joints).toMatchObject({ total: 22, cost: 0, buy: 0 });
    expect(buyText(joints, 'metric')).toBe('nothing: it is tied, and its cord is counted');
    expect(lineOf(lines, 'twine')).toMatchObject({ total: 44, buy: 1, cost: 8 });
  });
});

describe('ballast by the bag', () => {
  it('25 kg out of bags of 10 kg: three on each of 22 feet', () => {
    const gravel = {
      id: 'gravel',
      title: 'gravel',
      source: 'made up',
      origin,
      prices: [],
      kind: 'anchor' as const,
      form: 'block' as const,
      mass: 10,
    };
    const of = shelter({ roof: bows({ foot: { ...foot('ballast', 0), mass: 25, anchor: gravel } }) });
    expect(takeoff(of).lines.find((one) => one.item?.id === 'gravel')?.total).toBe(66);
  });
});

describe('screws by the pack', () => {
  it('have a price by the pack or by the piece', () => {
    const clips = (prices: ReturnType<typeof per>[]) => {
      const pack = supply('clips', 'wire-clip', { pack: 100, prices });
      const cable = {
        ...rail(),
        member: {
          id: 'rope',
          title: 'rope',
          source: 'made up',
          origin,
          prices: [],
          kind: 'cable' as const,
          diameter: 0.005,
          breakingLoad: 1e4,
          modulus: 1e11,
          area: 1e-5,
          massPerLength: 0.1,
        },
        clips: pack,
      };
      return lineOf(materials(shelter({ ridge: cable })).lines, 'clips');
    };
    // Two loops of three clips.
    expect(clips([per(7, 'pack')])).toMatchObject({ total: 6, buy: 1, cost: 7 });
    expect(clips([per(0.1, 'piece')]).cost).toBeCloseTo(10, 9);
  });
});

describe('wrapping', () => {
  it('a strip is wound with each turn a third over the last: 110 m of 34 mm pipe, 100 mm wide', () => {
    const strip = supply('strip', 'wrapping', { across: 0.1 });
    const { lines } = takeoff(shelter({ roof: bows({ wrapped: true, wrapping: strip }) }));
    const line = lines.find((one) => one.item?.id === 'strip');
    expect(line?.total).toBeCloseTo((110 * Math.PI * 0.034) / (0.1 * (2 / 3)), 9);
  });

  it('a hose lies along', () => {
    const hose = supply('hose', 'wrapping');
    const { lines } = takeoff(shelter({ roof: bows({ wrapped: true, wrapping: hose }) }));
    expect(lines.find((one) => one.item?.id === 'hose')?.total).toBe(110);
  });

  it('what the builder calls it is counted and has no price', () => {
    const own = materials(shelter({ roof: bows({ wrapped: true, wrapping: 'sacks' }) }));
    expect(own.lines.find(({ title }) => title === 'Wrapping, sacks')?.total).toBe(110);
    expect(own.cost.missing).toContain('Wrapping, sacks');
  });

  it('of a rail counts as well', () => {
    const { lines } = takeoff(shelter({ ridge: rail({ member: pvc, wrapping: 'hose' }) }));
    expect(lines.find(({ title }) => title === 'Wrapping, hose')?.total).toBe(12);
  });
});

describe('a rail of poles that lap over the posts', () => {
  it('each piece reaches half a metre into the next: 12 m out of 6 m over posts 2 m apart, 4.5 + 4.5 + 4 m', () => {
    const pole = { ...pvc, kind: 'pole' as const, id: 'pole' };
    const lap = joint('lap', 'lashing', 0.5);
    const { lines } = takeoff(shelter({ ridge: rail({ member: pole, span: 2, coupler: lap }) }));
    const pieces = lines.find((one) => one.item?.id === 'pole')?.pieces;
    expect(pieces?.map(({ length, count }) => [Number(length.toFixed(6)), count])).toEqual([
      [4.5, 2],
      [4, 1],
    ]);
    expect(lines.find((one) => one.item?.id === 'lap')?.total).toBe(2);
  });
});
