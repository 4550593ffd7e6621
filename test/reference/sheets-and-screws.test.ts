/** Corrugated sheet in bending, and screws pulled out: against published tables and worked values. */
import { screwInMetal, screwInWood, sheetOverWasher } from '@tautline/loads';
import { corrugated } from '@tautline/mechanics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const inch = 0.0254;
const pound = 4.4482216152605;
const ksi = 6.894757e6;

describe('screws out of steel, ICC evaluation reports ESR-1976 and ESR-2196, table 2 (AISI S100 J4, 45 ksi, Ω = 3)', () => {
  it.each([
    [0.19, 0.03, 73],
    [0.19, 0.06, 145],
    [0.216, 0.06, 165],
    [0.216, 0.125, 344],
    [0.25, 0.036, 115],
    [0.25, 0.105, 335],
  ])('%f in screw in %f in of steel: %i lbf', (diameter, wall, allowed) => {
    const { force } = screwInMetal(diameter * inch, wall * inch, 45 * ksi, 'asce7-asd');
    expect(Math.abs(force / pound - allowed)).toBeLessThan(0.6);
  });

  it('the strength format is 3.0 times 0.5 of it (note 4 of the table)', () => {
    const at = (basis: 'asce7-asd' | 'asce7-strength'): number =>
      screwInMetal(0.216 * inch, 0.06 * inch, 45 * ksi, basis).force;
    expect(at('asce7-strength') / at('asce7-asd')).toBeCloseTo(1.5, 12);
  });
});

describe('steel pulled over the head of a screw, a maker’s table after AISI S100 J4 (45 ksi, ultimate)', () => {
  it.each([
    [0.399, 0.03, 805],
    [0.399, 0.048, 1290],
    [0.415, 0.06, 1680],
    [0.5, 0.036, 1220],
  ])('head of %f in over %f in of steel: %i lbf', (head, thickness, ultimate) => {
    const { force } = sheetOverWasher(head * inch, thickness * inch, 45 * ksi, 'asce7-asd');
    expect(Math.abs((3 * force) / pound / ultimate - 1)).toBeLessThan(0.01);
  });
});

describe('wood screws', () => {
  it('NDS 12.2: no. 10 in spruce of G = 0.45 holds 109 lbf per inch of thread (worked by an engineers’ page)', () => {
    const { force, step } = screwInWood(
      { diameter: 0.19 * inch, grip: inch, density: 450 / 0.93 },
      false,
      'asce7-asd',
    );
    expect(step.inputs.find(({ symbol }) => symbol === 'G')?.value).toBeCloseTo(0.45, 9);
    // 1.6 for a gust is no part of the reference value.
    expect(Math.abs(force / 1.6 / pound - 109)).toBeLessThan(1);
  });

  it('EN 1995-1-1, 8.7.2: a thread of 8 mm, 60 mm deep in C24 (ρ_k 350), by hand: 6.36 kN (eq. 8.39)', () => {
    // 0.52 · 8^-0.5 · 60^-0.1 · 350^0.8 = 13.24 N/mm²; times 8 · 60.
    const { force } = screwInWood({ diameter: 0.008, grip: 0.06, density: 420 }, false, 'eurocode');
    expect((force * 1.3) / 1.1 / 1e3).toBeCloseTo(6.356, 2);
    expect(screwInWood({ diameter: 0.008, grip: 0.047, density: 420 }, false, 'eurocode').force).toBe(0);
  });
});

describe('corrugated sheet', () => {
  it('2-2/3 by 1/2 in waves, 0.0598 in thick: 0.0227 in⁴ a foot (ASTM A796, from memory), waves of arcs within 5 %', () => {
    // The depth of the table is that of the middle line.
    const { secondMoment } = corrugated(0.0598, 0.5 + 0.0598, 8 / 3);
    expect(Math.abs((12 * secondMoment) / 0.0227 - 1)).toBeLessThan(0.05);
  });

  it('agrees with the parabolic waves of an engineers’ pocket book (64/105 (b1 h1³ - b2 h2³)) within 5 %', () => {
    const [t, deep, wide] = [0.0598, 0.5, 8 / 3];
    const part = (sign: 1 | -1): number => ((wide + sign * 2.6 * t) / 4) * ((deep + sign * t) / 2) ** 3;
    const handbook = ((64 / 105) * (part(1) - part(-1))) / wide;
    expect(Math.abs(corrugated(t, deep + t, wide).secondMoment / handbook - 1)).toBeLessThan(0.05);
  });

  it('is the integral over its middle line, whatever the waves', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0005, max: 0.002, noNaN: true }),
        fc.double({ min: 0.005, max: 0.05, noNaN: true }),
        fc.double({ min: 0.05, max: 0.2, noNaN: true }),
        (t, deep, pitch) => {
          const a = (deep - t) / 2;
          let sum = t ** 3 / 24;
          const n = 20_000;
          for (let k = 0; k < n; k++) {
            const angle = (2 * Math.PI * (k + 0.5)) / n;
            const slope = ((2 * Math.PI * a) / pitch) * Math.cos(angle);
            sum += (t * (a * Math.sin(angle)) ** 2 * Math.hypot(1, slope)) / n;
          }
          expect(Math.abs(corrugated(t, deep, pitch).secondMoment / sum - 1)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 30 },
    );
  });
});
