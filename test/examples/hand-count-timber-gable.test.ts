/**
 * Hand count of a timber gable on posts, worked out beside each line. The spec is the example timber-gable
 * as it was when it was counted.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Counted, counted, FOOT } from './counted.ts';

const text = `
import "site.shelter"

yard { have 6 of lumber-4x4 at 10 ft }

shelter timber-gable on gully-terrace {
  footprint 14 ft by 40 ft
  posts sides of lumber-4x4 spaced 8 ft {
    height 7 ft
    foot hole { deep 3 ft; across 12 in }
    rail of lumber-2x6
  }
  rafters spaced 2 ft {
    of lumber-2x4
    shape gable
    pitch 27 deg
    camber 2 in
    overhang 1 ft
    joint plate-ply at peak
    tie of lumber-2x4 at 0 ft
    wrapped
  }
  ridge rail of lumber-2x6 {
    frames tied
    posts of lumber-4x4 spaced 8 ft { foot hole { deep 3 ft; across 12 in } }
  }
  braces along of lumber-2x4 { at corners }
  braces across of lumber-2x4 { at ends }
  sides open
  ends open
  cover roof with film-uv-200 {
    fastened by board-1x3
    tension 350 N/m
    roll 8 m
  }
}
`;

let hand: Counted;
beforeAll(async () => {
  hand = await counted(text);
});

const pitch = (27 * Math.PI) / 180;
/** Chord from eave to peak, and the rafter: arc of a 2 in camber (8/3 c^2/L) and 1 ft of overhang. */
const chord = (7 * FOOT) / Math.cos(pitch);
const rafter = chord + ((8 / 3) * 0.0508 ** 2) / chord + FOOT;

describe('timber-gable counted by hand', () => {
  it('2x4: 21 pairs of rafters, 21 ties of 14 ft, braces 4 along of 8 by 7 ft and 4 across of 14 by 7 ft', () => {
    expect(rafter).toBeCloseTo(2.7023, 3);
    expect(hand.pieces('lumber-2x4')).toEqual([
      // Across: hypot(14, 7) = 15.652 ft.
      '4 x 4.771',
      '21 x 4.267',
      // Along: hypot(8, 7) = 10.630 ft.
      '4 x 3.240',
      `42 x ${rafter.toFixed(3)}`,
    ]);
  });

  it('2x4 bars: a 16 ft board gives one of each long piece; no two rafters (17.7 ft) fit one: 71 bars', () => {
    expect(hand.bars('lumber-2x4').bought).toBe(4 + 21 + 4 + 42);
  });

  it('21 plates at the peaks; tape 2 in wide, each turn a third over the last, round 42 rafters of 3-1/2 by 1-1/2 in', () => {
    expect(hand.count('plate-ply')).toBe(21);
    // 10 in round: 7.5 times as long as the rafters, 851 m = 2,793 ft in rolls of 108 ft.
    const wrapping = hand.materials.lines.find((line) => line.item?.id === 'wrap-tape-2in');
    expect(wrapping?.total).toBeCloseTo(42 * rafter * 7.5, 1);
    expect(wrapping?.buy).toBe(26);
  });

  it('4x4: 2 x 6 side posts of 7 + 3 ft, 6 of them on hand; 6 ridge posts up to the ridge: 7 ft + 7 ft x tan 27 less rafter and 2x6, + 3 ft', () => {
    // The rafter is 3-1/2 in deep and meets the peak at some 23 degrees, its camber taken off: 1.75 in / cos 23.
    const tall = (7 + 7 * Math.tan(pitch) + 3) * FOOT - (1.75 / Math.cos(0.4) + 5.5) * 0.0254;
    const [ridgePosts, sidePosts] = hand.pieces('lumber-4x4');
    expect(sidePosts).toBe('12 x 3.048');
    const [count, length] = (ridgePosts ?? '').split(' x ').map(Number);
    expect(count).toBe(6);
    expect(length).toBeCloseTo(tall, 2);
    expect(hand.bars('lumber-4x4')).toEqual({ bought: 12, onHand: 6 });
  });

  it('2x6: two eave rails and a ridge of 40 ft, joined over posts 8 ft apart: three times 16 + 16 + 8 ft, 6 joints', () => {
    expect(hand.pieces('lumber-2x6')).toEqual(['6 x 4.877', '3 x 2.438']);
    expect(hand.count('fish-plates')).toBe(6);
  });

  it('film 40 ft + 0.6 m; boards round 12.792 m and two rafters with 8 in each side; 2 x 43 + 2 x 20 = 126 screws', () => {
    const across = 2 * rafter + 2 * 0.2032;
    expect(hand.pieces('film-uv-200')).toEqual(['1 x 12.792']);
    expect(hand.pieces('board-1x3')).toEqual([
      '6 x 4.877',
      '2 x 3.038',
      `2 x ${(across - 16 * FOOT).toFixed(3)}`,
    ]);
    expect(hand.materials.lines.find((line) => line.item?.id === 'screw-8x2in')?.total).toBe(126);
  });

  it('and nothing else', () => {
    expect(hand.items).toHaveLength(9);
  });
});
