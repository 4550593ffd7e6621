/**
 * Hand count of small PVC arches on a post and rail, worked out beside each line. The spec is the example
 * bed-arch as it was when it was counted.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Counted, counted } from './counted.ts';

const text = `
import "site.shelter"

yard {
  have 11 of pvc40-25 at 20 ft
  have 6 of lumber-4x4 at 10 ft
}

shelter bed-arch on gully-terrace {
  footprint 13 ft by 40 ft
  bows spaced 2 ft 6 in {
    of pvc40-25
    shape elastic
    length 20 ft
    foot stub of rebar-16 { length 6 ft; deep 3 ft 6 in; held clamped }
  }
  ridge rail of lumber-2x4 {
    frames tied
    posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } }
  }
  purlins 2 of pvc40-20 { at 5 ft up each side; joint lashing }
  braces along of lumber-1x4 { at corners; height 5 ft }
  baseboards of lumber-1x6 { joint pipe-strap }
  ends open
  cover roof with film-uv-150 {
    fastened by board-1x3
    strapped by strap-25 every 2 ft 6 in
    tension 200 N/m
    roll 24 ft
  }
}
`;

let hand: Counted;
beforeAll(async () => {
  hand = await counted(text);
});

describe('bed-arch counted by hand', () => {
  it('bows: 40 ft / 2.5 ft = 16 bays, 17 bows, each one whole pipe of 20 ft; 11 lie in the yard, 6 to buy', () => {
    expect(hand.pieces('pvc40-25')).toEqual(['17 x 6.096']);
    expect(hand.bars('pvc40-25')).toEqual({ bought: 6, onHand: 11 });
  });

  it('stubs: 2 x 17 = 34 of 6 ft, three to a bar of 20 ft (a fourth needs 24 ft): 11 bars of 3, and a short bar', () => {
    expect(hand.pieces('rebar-16')).toEqual(['34 x 1.829']);
    expect(hand.bars('rebar-16')).toEqual({ bought: 12, onHand: 0 });
  });

  it('ridge: 40 ft out of 16 ft boards joined over posts 8 ft apart: 16 + 16 + 8 ft, 2 joints', () => {
    expect(hand.pieces('lumber-2x4')).toEqual(['2 x 4.877', '1 x 2.438']);
    // These and the four of the baseboards: plates over the butts, in one count.
    expect(hand.count('fish-plates')).toBe(2 + 4);
  });

  it('ridge posts: 40 ft / 8 ft = 5 bays, 6 posts, all out of the 6 in the yard', () => {
    // Height: the elastica of 20 ft over 13 ft rises 0.332909 of its length (elliptic integrals), less what the
    // ridge and the pipe themselves take; the hand count holds it to the size of the ridge.
    const [pieces] = hand.pieces('lumber-4x4');
    const [count, length] = (pieces ?? '').split(' x ').map(Number);
    expect(count).toBe(6);
    const crown = 0.332909 * 20 * 0.3048;
    expect(length).toBeLessThanOrEqual(crown + 0.61 + 1e-3);
    expect(length).toBeGreaterThan(crown + 0.61 - 0.15);
    expect(hand.bars('lumber-4x4')).toEqual({ bought: 0, onHand: 6 });
  });

  it('purlins: 2 lines of 40 ft out of 20 ft pipe: 4 pieces, 2 joints, 2 x 17 = 34 lashings', () => {
    expect(hand.pieces('pvc40-20')).toEqual(['4 x 6.096']);
    expect(hand.count('socket-20')).toBe(2);
    expect(hand.count('lashing')).toBe(34);
    // 2 m of twine each, 68 m, off one roll of 360 ft.
    const twine = hand.materials.lines.find((line) => line.item?.id === 'tarred-twine-36');
    expect(twine).toMatchObject({ total: 68, buy: 1 });
  });

  it('baseboards: 2 lines of 40 ft; 16 ft boards reach over 6 bays of 2.5 ft: 15 + 15 + 10 ft, 34 straps', () => {
    expect(hand.pieces('lumber-1x6')).toEqual(['4 x 4.572', '2 x 3.048']);
    expect(hand.count('pipe-strap')).toBe(34);
  });

  it('braces: one in each corner, 4', () => {
    expect(hand.materials.lines.find((line) => line.item?.id === 'lumber-1x4')?.pieces?.[0]?.count).toBe(4);
  });

  it('film: 40 ft and 0.3 m over each end = 12.792 m off one roll of 24 ft', () => {
    expect(hand.pieces('film-uv-150')).toEqual(['1 x 12.792']);
    expect(hand.bars('film-uv-150')).toEqual({ bought: 1, onHand: 0 });
  });

  it('boards: edges 2 x 12.792 m and 2 x (20 ft + 2 x 8 in = 6.502 m), out of 16 ft', () => {
    // 12.792 = 2 x 4.877 + 3.038; 6.502 = 4.877 + 1.626. Whole: 2 x 2 + 2 x 1 = 6. The rests pair up: 2 more.
    expect(hand.pieces('board-1x3')).toEqual(['6 x 4.877', '2 x 3.038', '2 x 1.626']);
    expect(hand.bars('board-1x3')).toEqual({ bought: 8, onHand: 0 });
  });

  it('screws every 0.3 m: 42 spaces and 1 on the long edges, 21 and 1 on the short: 2 x 43 + 2 x 22 = 130', () => {
    const screws = hand.materials.lines.find((line) => line.item?.id === 'screw-8x2in');
    // Two packs of 100.
    expect(screws).toMatchObject({ total: 130, buy: 2 });
  });

  it('straps: 12.792 / 0.762 = 16.8, so 17, each 6.502 m and half a metre at both ends', () => {
    expect(hand.pieces('strap-25')).toEqual(['17 x 7.502']);
  });

  it('and nothing else', () => {
    expect(hand.items).toHaveLength(16);
    expect(hand.materials.gaps.map((gap) => gap.what)).toEqual([
      'what ties the 17 frames to the ridge: the spec names no joint there',
    ]);
  });
});
