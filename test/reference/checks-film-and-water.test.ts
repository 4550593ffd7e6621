/** Checks of the checks against handbook values, each with its source. */
import { runoff } from '@tautline/loads';
import { describe, expect, it } from 'vitest';
import { arcRadius, filmLoad, liftedPull } from '../../packages/checks/src/film-pull.ts';
import { leastRadius } from '../../packages/checks/src/slender.ts';
import { brace, finding, pipe, postStock, sprungHouse, steel } from '../../packages/checks/test/houses.ts';

const inch = 0.0254;

describe("segments of circles (Machinery's Handbook, table of segments for radius 1; from memory)", () => {
  it.each([
    // central angle, length of arc, chord
    [30, 0.5236, 0.5176],
    [60, 1.0472, 1.0],
    [75, 1.309, 1.2175],
    [120, 2.0944, 1.7321],
    [150, 2.618, 1.9319],
  ])('%s°: arc %s over chord %s has radius 1', (_, arc, chord) => {
    expect(arcRadius(arc, chord)).toBeCloseTo(1, 2);
  });
});

describe('thin cylinder under even pressure, T = p R (Timoshenko, Strength of Materials, hoop stress; from memory)', () => {
  it('film as a half circle over a 4 m span at 500 Pa pulls 1000 N/m when it does not stretch', () => {
    const house = sprungHouse();
    const found = filmLoad(house, house.covers[0]!);
    if ('reason' in found) throw new Error(found.reason);
    const stiff = {
      ...found,
      length: 2 * Math.PI,
      chord: 4,
      panel: { ...found.panel, stiffness: 1e12 },
    };
    expect(liftedPull(stiff, 500).pull).toBeCloseTo(1000, 3);
  });
});

describe('rational method (any hydrology handbook: 1 in/h on 1 acre runs off at 1.008 ft³/s)', () => {
  it('Q = C i A', () => {
    const flow = runoff(inch / 3600, 4046.8564224).flow;
    expect(flow / 0.3048 ** 3).toBeCloseTo(1.008, 3);
  });
});

describe('radius of gyration (AISC Manual, round pipe; ASTM A53 standard weight, from memory)', () => {
  it.each([
    // nominal, outside in, wall in, r in
    ['1', 1.315, 0.133, 0.421],
    ['1-1/2', 1.9, 0.145, 0.623],
    ['2', 2.375, 0.154, 0.787],
    ['3', 3.5, 0.216, 1.16],
  ])('pipe %s', (_, outside, wall, r) => {
    expect(leastRadius(pipe('p', steel, outside * inch, wall * inch, [6])) / inch).toBeCloseTo(r, 2);
  });

  it('a square of side b has b / √12', () => {
    expect(leastRadius(postStock)).toBeCloseTo((3.5 * inch) / Math.sqrt(12), 9);
  });
});

describe('a 3-4-5 triangle as a brace (statics)', () => {
  it('pulls 5/4 of the push it takes', () => {
    const along = brace({ from: { x: 0, y: 0, z: 0 }, to: { x: 0, y: 3, z: 4 }, count: 2 });
    const [push, pull] = finding('racking', { ...sprungHouse(), braces: [along] }).steps;
    expect(pull!.value / push!.value).toBeCloseTo(1.25, 9);
  });
});

describe('Beaufort 5 and q = 0.613 V² (ASCE 7-16 26.10 in SI units)', () => {
  it('a fresh breeze of 10.7 m/s presses with 70 Pa', () => {
    const [pressure] = finding('flutter', sprungHouse()).steps;
    expect(pressure!.value).toBeCloseTo(70.2, 1);
  });
});
