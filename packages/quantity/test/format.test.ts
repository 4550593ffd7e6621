import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asKind,
  format,
  formatBoth,
  formatNumber,
  type KindName,
  kinds,
  parseQuantity,
  type System,
  toSpecText,
} from '../src/index.ts';

const names = Object.keys(kinds) as KindName[];
const kindName = fc.constantFrom(...names);
const system = fc.constantFrom<System>('metric', 'us');
const size = fc
  .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -8, max: 6 }))
  .map(([mantissa, power]) => mantissa * 10 ** power);

function readAs(text: string, kind: KindName): number {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.reason}`);
  const taken = asKind(read, kind);
  if (!taken.ok) throw new Error(`${text}: ${taken.reason}`);
  return taken.si;
}

describe('showing', () => {
  it.each<[number, KindName, string, string]>([
    [4.2672, 'length', '4.27 m', '14 ft'],
    [2.286, 'length', '2.29 m', '7 ft 6 in'],
    [0.034925, 'length', '34.9 mm', '1-3/8 in'],
    [0.30479, 'length', '0.305 m', '1 ft'],
    [-0.3048, 'length', '-0.305 m', '-1 ft'],
    [0, 'length', '0 m', '0 ft'],
    [150e-6, 'film-thickness', '150 µm', '5.91 mil'],
    [152.4e-6, 'film-thickness', '152 µm', '6 mil'],
    [38.5, 'speed', '38.5 m/s', '86.1 mph'],
    [3.3782e-3, 'thickness', '3.38 mm', '0.133 in'],
    [0.25, 'slope', '25 %', '25 %'],
    [Math.PI / 2, 'angle', '90°', '90°'],
    [23, 'temperature', '23 °C', '73.4 °F'],
    [2.8e9, 'stress', '2.8 GPa', '406 ksi'],
    [300, 'pressure', '300 Pa', '6.27 psf'],
    [110e-3 / 3600, 'rain-rate', '110 mm/h', '4.33 in/h'],
    [12, 'count', '12', '12'],
    [12.5, 'money', '12.50', '12.50'],
    [12345, 'force', '12.3 kN', '2775 lbf'],
  ])('shows %d as %s', (si, kind, metric, us) => {
    expect(format(si, kind, 'metric')).toBe(metric);
    expect(format(si, kind, 'us')).toBe(us);
  });

  it('shows both systems, the own one first', () => {
    expect(formatBoth(4.2672, 'length')).toBe('4.27 m (14 ft)');
    expect(formatBoth(4.2672, 'length', 'us')).toBe('14 ft (4.27 m)');
    expect(formatBoth(0.25, 'slope')).toBe('25 %');
  });

  it('takes an asked unit, digits and inch parts', () => {
    expect(format(4.2672, 'length', 'us', { unit: 'in' })).toBe('168 in');
    expect(format(Math.PI, 'length', 'metric', { digits: 5 })).toBe('3.1416 m');
    expect(format(2.3, 'length', 'us', { inchParts: 2 })).toBe('7 ft 6-1/2 in');
  });

  it('never shows what is not a number', () => {
    expect(() => format(Number.NaN, 'length', 'metric')).toThrow(RangeError);
    expect(() => formatNumber(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => format(1, 'lenght' as KindName, 'metric')).toThrow(/no kind/);
    expect(() => toSpecText(Number.NaN, 'length', 'metric')).toThrow(RangeError);
  });

  it('shows a value that reads back within the rounding', () => {
    fc.assert(
      fc.property(size, kindName, system, (si, kind, which) => {
        if (kind === 'count' || kind === 'money' || kinds[kind].difference === true) return;
        const back = readAs(format(si, kind, which, { digits: 6 }), kind);
        const coarse = kind === 'length' && which === 'us' ? 0.0254 / 2 : 0;
        const shift = kind === 'temperature' ? 20 : 0;
        expect(Math.abs(back - si)).toBeLessThanOrEqual((si + shift) * 1e-5 + coarse);
      }),
    );
  });

  it('shows how much warmer something is without the zero of the scale', () => {
    expect(format(10, 'temperature-difference', 'us')).toBe('18 °F');
    expect(format(10, 'temperature-difference', 'metric')).toBe('10 °C');
    expect(format(10, 'temperature', 'us')).toBe('50 °F');
  });

  it('keeps whole digits and drops empty ones', () => {
    expect(formatNumber(123456)).toBe('123456');
    expect(formatNumber(0.1 + 0.2)).toBe('0.3');
    expect(formatNumber(-0)).toBe('0');
    expect(formatNumber(-0.00000001, 3)).toBe('-1e-8');
    expect(formatNumber(100)).toBe('100');
  });
});

describe('writing into a spec', () => {
  it.each([
    [1.234, 'length', 'metric', 'down', '1.20 m', 1.2],
    [1.234, 'length', 'metric', 'up', '1.25 m', 1.25],
    [1.2, 'length', 'metric', 'down', '1.20 m', 1.2],
    [1.19, 'length', 'us', 'down', '3 ft 10 in', 1.1684],
    [0.021, 'length', 'us', 'up', '1 in', 0.0254],
    [0.0036, 'thickness', 'us', 'up', '0.15 in', 0.00381],
    [0.37, 'angle', 'metric', 'nearest', '21 deg', (21 * Math.PI) / 180],
    [7.2, 'count', 'metric', 'up', '8', 8],
    [1234, 'line-load', 'metric', 'up', '1.3 kN/m', 1300],
    [0.0003, 'length', 'metric', 'down', '0.3 mm', 0.0003],
  ] as const)('writes %d %s (%s, %s) as %s', (si, kind, which, round, text, value) => {
    const written = toSpecText(si, kind, which, round);
    expect(written.text.replace(/\.?0+(?= )/, '')).toBe(text.replace(/\.?0+(?= )/, ''));
    expect(written.si).toBe(value);
  });

  it('reads back exactly and stays on the asked side, for every kind', () => {
    fc.assert(
      fc.property(size, kindName, system, (si, kind, which) => {
        const down = toSpecText(si, kind, which, 'down');
        const up = toSpecText(si, kind, which, 'up');
        const near = toSpecText(si, kind, which, 'nearest');
        expect(readAs(down.text, kind)).toBe(down.si);
        expect(readAs(up.text, kind)).toBe(up.si);
        expect(down.si).toBeLessThanOrEqual(si);
        expect(up.si).toBeGreaterThanOrEqual(si);
        expect(near.si).toBeGreaterThanOrEqual(down.si);
        expect(near.si).toBeLessThanOrEqual(up.si);
        // What was written once is written the same again.
        expect(toSpecText(near.si, kind, which, 'nearest').si).toBe(near.si);
      }),
    );
  });
});
