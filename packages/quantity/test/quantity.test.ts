import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  asKind,
  compare,
  divide,
  type KindName,
  kinds,
  multiply,
  negate,
  parseQuantity,
  type Quantity,
  subtract,
  suggestUnits,
  unitOf,
  unitSymbols,
} from '../src/index.ts';

function q(text: string): Quantity {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(read.reason);
  return read;
}
function reason(result: { ok: true } | { ok: false; reason: string }): string {
  return result.ok ? 'read without complaint' : result.reason;
}
function as(text: string, kind: KindName): number {
  const result = asKind(q(text), kind);
  if (!result.ok) throw new Error(result.reason);
  return result.si;
}

describe('reading quantities', () => {
  it('gives the same double for the same length in either system', () => {
    expect(q('14 ft').si).toBe(q('4.2672 m').si);
    expect(q('7 ft 6 in').si).toBe(q('2.286 m').si);
    expect(q('1-3/8 in').si).toBe(q('34.925 mm').si);
    expect(q('6 mil').si).toBe(q('152.4 um').si);
    expect(q('180 deg').si).toBe(Math.PI);
    expect(q('0.1 ft').si).toBe(q('30.48 mm').si);
  });

  it('holds that for any decimal number of feet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 ** 7 }), (n) => {
        // n hundredths of a foot are n * 3.048 mm; both texts are exact.
        const mm = `${(BigInt(n) * 3048n) / 1000n}.${String((BigInt(n) * 3048n) % 1000n).padStart(3, '0')}`;
        expect(q(`${n}/100 ft`).si).toBe(q(`${mm} mm`).si);
      }),
    );
  });

  it('counts a minus sign for the whole of a mixed length', () => {
    expect(q('-7 ft 6 in').si).toBe(-2.286);
  });

  it.each([
    ['6 in 7 ft', /larger unit first: ft comes before in/],
    ['7 ft 6 ft', /larger unit first/],
    ['7 ft 6 kg', /ft is a length and kg is a mass/],
    ['7 ft 6', /unit is missing after the last/],
    ['7 6 in', /unit is missing after the first/],
    ['3 degC 4 degC', /temperature is written with one unit/],
    ['6 feet', /did you mean 'ft'/],
    ['6 KN', /did you mean 'kN' or 'kn'/],
    ['abc', /no quantity/],
    ['7 ft -6 in', /minus sign/],
  ])('explains %s', (text, expected) => {
    expect(reason(parseQuantity(text))).toMatch(expected);
  });

  it('never throws', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[0-9 ./:-]{0,8}[a-zA-Z/0-9.° ]{0,10}$/)),
        (text) => {
          const read = parseQuantity(text);
          if (read.ok) expect(Number.isFinite(read.si)).toBe(true);
          unitOf(text);
          suggestUnits(text);
        },
      ),
    );
  });
});

describe('calculating', () => {
  it('keeps exactness, so that 0.1 ft + 0.2 ft is 0.3 ft', () => {
    const sum = add(q('0.1 ft'), q('0.2 ft'));
    expect(sum.ok && sum.si).toBe(q('0.3 ft').si);
    const back = subtract(q('0.3 m'), q('0.1 m'));
    expect(back.ok && back.si).toBe(0.2);
  });

  it('follows dimensions', () => {
    const area = multiply(q('3 m'), q('4 m'));
    expect(area.ok && asKind(area, 'area')).toEqual({ ok: true, si: 12 });
    const spacing = divide(q('14.4 m'), q('12'));
    expect(spacing.ok && asKind(spacing, 'length')).toEqual({
      ok: true,
      si: 1.2,
    });
  });

  it('explains what does not fit', () => {
    expect(reason(add(q('3 m'), q('20 deg')))).toBe('expected a length, found an angle');
    expect(reason(compare(q('3 m'), q('4 kg')))).toBe('expected a length, found a mass');
    expect(reason(divide(q('3 m'), q('0')))).toBe('division by zero');
    expect(reason(add(q('20 degC'), q('5 degC')))).toMatch(/temperature/);
    expect(reason(multiply(q('20 degC'), q('2')))).toMatch(/temperature/);
  });

  it('is commutative, and subtracting undoes adding', () => {
    const length = fc.tuple(fc.integer({ min: -999, max: 999 }), fc.constantFrom('m', 'ft', 'in', 'mm'));
    fc.assert(
      fc.property(length, length, ([a, u], [b, v]) => {
        const x = q(`${a} ${u}`);
        const y = q(`${b} ${v}`);
        const sum = add(x, y);
        const other = add(y, x);
        if (!sum.ok || !other.ok) throw new Error('lengths did not add');
        expect(sum.si).toBe(other.si);
        const back = subtract(sum, y);
        expect(back.ok && back.si).toBe(x.si);
      }),
    );
  });

  it('compares exactly, and negates', () => {
    expect(compare(q('1 ft'), q('304.8 mm'))).toEqual({ ok: true, order: 0 });
    expect(compare(q('1 ft'), q('0.3048000000000001 m'))).toEqual({
      ok: true,
      order: -1,
    });
    const minus = negate(q('2 m'));
    expect(minus.ok && minus.si).toBe(-2);
  });
});

describe('fitting a kind', () => {
  it('takes the mass on an area or length as its weight', () => {
    expect(as('15 kg/m2', 'pressure')).toBe(147.09975);
    expect(as('2 kg/m', 'line-load')).toBe(19.6133);
    expect(as('10 lb/ft', 'line-load')).toBe(as('10 plf', 'line-load'));
    expect(as('30 lb/ft2', 'pressure')).toBe(as('30 psf', 'pressure'));
  });

  it('takes slopes and angles for each other', () => {
    expect(as('1:1', 'angle')).toBe(Math.PI / 4);
    expect(as('1:4', 'slope')).toBe(0.25);
    expect(as('25 %', 'slope')).toBe(0.25);
    expect(as('45 deg', 'slope')).toBeCloseTo(1, 15);
    expect(reason(asKind(q('90 deg'), 'slope'))).toMatch(/less than upright/);
  });

  it('takes bare numbers only where no unit belongs', () => {
    expect(as('4.20', 'money')).toBe(4.2);
    expect(as('12', 'count')).toBe(12);
    expect(reason(asKind(q('1.5'), 'count'))).toMatch(/whole number/);
    expect(reason(asKind(q('4'), 'length'))).toBe(
      'expected a length, e.g. 4.2 m, found a number without a unit',
    );
  });

  it('explains a mass where a force belongs, and other misfits', () => {
    expect(reason(asKind(q('20 kg'), 'force'))).toMatch(/weight in N, kN or lbf/);
    expect(reason(asKind(q('20 deg'), 'length'))).toBe('expected a length, e.g. 4.2 m, found an angle');
  });
});

describe('units', () => {
  it('every listed symbol reads, prints and reads back from its printed form', () => {
    for (const symbol of unitSymbols()) {
      const unit = unitOf(symbol);
      expect(unit, symbol).toBeDefined();
      expect(unitOf(unit!.display)?.symbol, symbol).toBe(symbol);
    }
  });

  it('every kind shows in units of its own dimension, from small to large', () => {
    for (const [name, kind] of Object.entries(kinds)) {
      for (const ladder of [kind.metric, kind.us]) {
        expect(ladder[0]?.from, name).toBe(0);
        for (const [index, rung] of ladder.entries()) {
          if (rung.unit !== '')
            expect(unitOf(rung.unit)?.dimension, `${name} ${rung.unit}`).toEqual(kind.dimension);
          if (index > 0) expect(rung.from).toBeGreaterThan(ladder[index - 1]!.from);
        }
      }
    }
  });

  it('offers what the writer meant', () => {
    expect(suggestUnits('Feet')).toEqual(['ft']);
    expect(suggestUnits('microns')).toEqual(['um']);
    expect(suggestUnits('gsm')).toEqual(['g/m2']);
    expect(suggestUnits('N/m3')).toContain('N/m2');
    expect(suggestUnits('bananas')).toEqual([]);
  });
});
