import { describe, expect, it } from 'vitest';
import { textWidth } from '../src/scene/lettering.ts';

/**
 * Widths at 11 units, by the horizontal metrics of two faces: DejaVu Sans 2.37 (read from the font) and Helvetica
 * (Adobe Core 14 font metrics, from memory).
 */
const measured = [
  {
    words: 'held by Batten board 1x3, screwed down over the rolled film edge',
    dejaVu: 365.8,
    helvetica: 319.2,
  },
  { words: 'headroom 3 ft 4-3/8 in', dejaVu: 124.0, helvetica: 107.6 },
];

describe('the room kept for words', () => {
  it.each(measured)('is enough in the faces that readers have: $words', ({ words, dejaVu, helvetica }) => {
    const room = textWidth(words, 11);
    expect(room).toBeGreaterThanOrEqual(Math.max(dejaVu, helvetica) - 0.1);
    expect(room).toBeLessThan(1.03 * dejaVu);
  });

  it('is enough in bold', () => {
    expect(textWidth('headroom 3 ft 4-3/8 in', 11, true)).toBeGreaterThanOrEqual(138.7);
  });
});
