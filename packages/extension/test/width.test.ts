import { describe, expect, it } from 'vitest';
import { widthTold } from '../src/preview/width.ts';

describe('the width a page tells', () => {
  it('is none where drawings have room, and goes in steps below that', () => {
    expect(widthTold(1200)).toBeUndefined();
    expect(widthTold(760)).toBeUndefined();
    expect(widthTold(759)).toBe(720);
    expect(widthTold(505)).toBe(widthTold(519));
    expect(widthTold(505)).toBe(480);
  });
});
