/**
 * Hand count of a large PVC arch house on a cable ridge, worked out beside each line. The spec is the
 * example cable-house as it was when it was counted.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Counted, counted, FOOT } from './counted.ts';

const text = `
import "site.shelter"

shelter cable-house on gully-terrace {
  footprint 20 ft by 60 ft
  bows spaced 3 ft {
    of pvc80-40
    shape elastic
    length 32 ft
    joint socket-40 at 6 ft
    joint socket-40 at 26 ft
    foot stub of gal-32 { length 6 ft; deep 3 ft 6 in; held clamped }
  }
  ridge cable of strand-9 {
    tension 8 kN
    frames tied
    posts of lumber-4x6 spaced 15 ft { foot concrete { deep 3 ft; across 14 in } }
    foot deadman of log-deadman { deep 4 ft }
  }
  purlins 2 of pvc40-25 { at 9 ft up each side; joint lashing }
  braces along of wire-4 { at corners; height 6 ft }
  guys of strand-9 { at ends; out 8 ft; foot deadman of log-deadman { deep 4 ft } }
  ends open
  cover roof with film-uv-200 {
    fastened by board-1x3
    strapped by strap-25 every 3 ft
    tension 250 N/m
    roll 12 m
  }
}
`;

let hand: Counted;
beforeAll(async () => {
  hand = await counted(text);
});

describe('cable-house counted by hand', () => {
  it('bows: 60 ft / 3 ft = 20 bays, 21 bows of 6 + 20 + 6 ft: 21 whole pipes, 42 ends of 6 ft, 42 sockets', () => {
    expect(hand.pieces('pvc80-40')).toEqual(['21 x 6.096', '42 x 1.829']);
    expect(hand.count('socket-40')).toBe(42);
    // Three ends to a pipe (18 ft and saw cuts): 14 pipes and the 21.
    expect(hand.bars('pvc80-40')).toEqual({ bought: 35, onHand: 0 });
  });

  it('stubs: 42 of 6 ft, three to a length of 21 ft: 14', () => {
    expect(hand.pieces('gal-32')).toEqual(['42 x 1.829']);
    expect(hand.bars('gal-32').bought).toBe(14);
  });

  it('posts: 60 ft / 15 ft = 4 bays, 5 posts up to the cable and 3 ft into concrete', () => {
    // The elastica of 32 ft over 20 ft (S/L = 0.625) rises between 0.3329 and 0.3487 of its length.
    const [count, length] = (hand.pieces('lumber-4x6')[0] ?? '').split(' x ').map(Number);
    expect(count).toBe(5);
    expect(length).toBeGreaterThan(0.3329 * 32 * FOOT + 3 * FOOT);
    expect(length).toBeLessThan(0.3487 * 32 * FOOT + 3 * FOOT);
  });

  it('concrete: 5 holes of 14 in by 3 ft less posts of 3-1/2 by 5-1/2 in, and a tenth: 5 x (154 - 19.25) in2 x 36 in', () => {
    // pi / 4 x 14^2 = 153.94 in2; 5 x 134.69 in2 x 36 in = 24,244 in3 = 14.03 ft3, and a tenth 15.43 ft3.
    const concrete = hand.materials.lines.find((line) => line.item?.id === 'concrete-80lb');
    expect(concrete?.total).toBeCloseTo(15.43 * FOOT ** 3, 3);
    // 15.43 / 0.60 = 25.7 bags.
    expect(concrete?.buy).toBe(26);
  });

  it('cables: the ridge once, two guys, four braces; 3 clips on each of 2 x 7 loops = 42', () => {
    // The cable of 9.5 mm lies on the posts, the pipe of 1.9 in on the cable; 0.5 m for each loop; ends led
    // down at 45 degrees, guys from the crown.
    const top = Number((hand.pieces('lumber-4x6')[0] ?? '').split(' x ')[1]) - 3 * FOOT;
    const ridge = 60 * FOOT + 2 * Math.SQRT2 * (top + 0.0095 / 2) + 1;
    const guy = Math.hypot(8 * FOOT, top + 0.0095 + 0.95 * 0.0254) + 1;
    const lengths = hand.pieces('strand-9').map((one) => one.split(' x ').map(Number));
    expect(lengths.map(([count]) => count)).toEqual([1, 2]);
    expect(lengths[0]?.[1]).toBeCloseTo(ridge, 2);
    expect(lengths[1]?.[1]).toBeCloseTo(guy, 2);
    expect(hand.pieces('wire-4')[0]).toMatch(/^4 x /);
    // Strand of 3/8 in: the ridge and two guys, 6 loops; wire of 4 mm: 8 loops.
    expect(hand.count('clip-9')).toBe(18);
    expect(hand.count('clip-5')).toBe(24);
  });

  it('anchors: one at each end of the ridge and one a guy: 4', () => {
    expect(hand.count('log-deadman')).toBe(4);
  });

  it('purlins: 2 lines of 60 ft out of 20 ft: 6 pieces, 4 joints, 2 x 21 = 42 lashings', () => {
    expect(hand.pieces('pvc40-25')).toEqual(['6 x 6.096']);
    expect(hand.count('socket-25')).toBe(4);
    expect(hand.count('lashing')).toBe(42);
  });

  it('film 60 ft + 0.6 m; boards round 18.888 and 10.160 m out of 16 ft; 2 x 63 + 2 x 34 = 194 screws; 21 straps', () => {
    // Arc and allowance: 32 ft + 2 x 8 in = 10.160 m. 18.888 = 3 x 4.877 + 4.258; 10.160 = 2 x 4.877 + 0.406.
    expect(hand.pieces('film-uv-200')).toEqual(['1 x 18.888']);
    expect(hand.pieces('board-1x3')).toEqual(['10 x 4.877', '2 x 4.258', '2 x 0.406']);
    expect(hand.bars('board-1x3').bought).toBe(12);
    expect(hand.materials.lines.find((line) => line.item?.id === 'screw-8x2in')?.total).toBe(194);
    // 18.888 / 0.9144 = 20.7.
    expect(hand.pieces('strap-25')).toEqual(['21 x 11.160']);
  });

  it('and nothing else', () => {
    expect(hand.items).toHaveLength(18);
  });
});
