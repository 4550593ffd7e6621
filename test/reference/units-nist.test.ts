import { parseQuantity } from '@tautline/quantity';
import { describe, expect, it } from 'vitest';

/**
 * Conversion factors as printed in NIST Special Publication 811 (2008), Appendix B.8 and B.9: seven
 * significant digits, exact ones in full (bold there). From memory of that table where not defined
 * exactly by the inch, the pound and standard gravity.
 */
const printed: readonly (readonly [text: string, si: number])[] = [
  ['1 acre', 4046.856], // NIST prints 4.046 873 E+03 for the survey acre; the international acre is 43 560 ft2
  ['1 ft', 0.3048],
  ['1 in', 0.0254],
  ['1 yd', 0.9144],
  ['1 mil', 2.54e-5],
  ['1 mi', 1609.344],
  ['1 ft2', 0.09290304],
  ['1 in2', 6.4516e-4],
  ['1 ft3', 0.02831685],
  ['1 yd3', 0.7645549],
  ['1 in3', 1.638706e-5],
  ['1 in4', 4.162314e-7],
  ['1 gal', 3.785412e-3],
  ['1 lb', 0.4535924],
  ['1 oz', 0.02834952],
  ['1 lbf', 4.448222],
  ['1 kip', 4448.222],
  ['1 psi', 6894.757],
  ['1 ksi', 6.894757e6],
  ['1 psf', 47.88026],
  ['1 lbf/in', 175.1268],
  ['1 plf', 14.5939],
  ['1 lbf.ft', 1.355818],
  ['1 lbf.in', 0.1129848],
  ['1 lb/ft', 1.488164],
  ['1 lb/ft2', 4.882428],
  ['1 lb/ft3', 16.01846],
  ['1 oz/yd2', 0.03390575],
  ['1 mph', 0.44704],
  ['1 km/h', 0.2777778],
  ['1 kn', 0.5144444],
  ['1 in/h', 7.055556e-6],
  ['1 gal/min', 6.30902e-5],
  ['1 deg', 0.01745329],
  ['1 L', 1e-3],
  ['1 ha', 1e4],
  ['1 t', 1e3],
];

describe('NIST SP 811 (2008), Appendix B conversion factors', () => {
  it.each(printed)('%s', (text, si) => {
    const read = parseQuantity(text);
    if (!read.ok) throw new Error(read.reason);
    expect(Math.abs(read.si / si - 1)).toBeLessThan(5.1e-7);
  });

  it.each([
    ['32 degF', 0],
    ['212 degF', 100],
    ['-40 degF', -40],
    ['0 K', -273.15],
  ])('temperature scale: %s (exact, B.8: t/°C = (t/°F - 32)/1.8)', (text, celsius) => {
    const read = parseQuantity(text);
    expect(read.ok && read.si).toBe(celsius);
  });
});
