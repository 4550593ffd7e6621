import { describe, expect, it } from 'vitest';
import { isDay, laterBy, monthsLater } from '../src/index.ts';

describe('days', () => {
  it.each([
    ['2026-11-30', 3, '2027-02-28'],
    ['2027-11-30', 3, '2028-02-29'],
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-11-25', 14, '2028-01-25'],
  ])('%s and %d months is %s', (day, months, later) => {
    expect(monthsLater(day, months)).toBe(later);
  });

  it.each(['2026-02-30', '2026-13-01', '26-01-01', 'soon', ''])('%s is no day', (text) => {
    expect(isDay(text)).toBe(false);
  });

  it('counts whole days only', () => {
    expect(laterBy('2026-12-31', 86_400)).toBe('2027-01-01');
    expect(laterBy('2026-12-31', 86_399)).toBe('2026-12-31');
  });

  it('throw for what is no day', () => {
    expect(() => laterBy('2026-13-01', 1)).toThrow(RangeError);
    expect(() => monthsLater('soon', 1)).toThrow(RangeError);
  });
});
