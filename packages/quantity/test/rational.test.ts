import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNumber, parseRatio, rational, rationalOf, toNumber } from '../src/index.ts';

describe('numbers as written in the field', () => {
  it.each([
    ['14', 14],
    ['2.5', 2.5],
    ['.5', 0.5],
    ['3/4', 0.75],
    ['1-3/8', 1.375],
    ['1 3/8', 1.375],
    ['-1-3/8', -1.375],
    ['2.8e9', 2.8e9],
    ['7e-5', 7e-5],
    ['0.1', 0.1],
  ])('reads %s', (text, value) => {
    expect(toNumber(parseNumber(text)!)).toBe(value);
  });

  it.each(['', ' ', '-', 'x', '1/0', '1-2', '1..2', '5.', '1e999', '0x10', '1,5', '1/2/3', '9'.repeat(99)])(
    'does not read %j',
    (text) => expect(parseNumber(text)).toBeUndefined(),
  );

  it('reads a slope as rise over run', () => {
    expect(toNumber(parseRatio('1:4')!)).toBe(0.25);
    expect(parseRatio('1:0')).toBeUndefined();
    expect(parseRatio('1:2:3')).toBeUndefined();
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[-0-9/.e: ]{0,20}$/)), (text) => {
        parseNumber(text);
        parseRatio(text);
      }),
    );
  });

  it('agrees with the language’s own reading of decimals to the last bit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10 ** 9 }),
        fc.integer({ min: -30, max: 30 }),
        (digits, power) => {
          const text = `${digits}e${power}`;
          expect(toNumber(parseNumber(text)!)).toBe(Number(text));
        },
      ),
    );
  });

  it('turns any normal double into a fraction and back unchanged', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }).filter((x) => x === 0 || Math.abs(x) > 1e-290),
        (x) => {
          expect(toNumber(rationalOf(x))).toBe(x === 0 ? 0 : x);
        },
      ),
    );
  });

  it('rounds a quotient as the machine divides two doubles', () => {
    const whole = fc.integer({ min: 1, max: 2 ** 31 - 1 });
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        expect(toNumber(rational(a, b))).toBe(a / b);
      }),
    );
  });

  it('refuses a zero denominator and what is not finite', () => {
    expect(() => rational(1, 0)).toThrow(RangeError);
    expect(() => rationalOf(Number.NaN)).toThrow(RangeError);
  });
});
