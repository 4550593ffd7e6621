import { describe, expect, it } from 'vitest';
import { moved } from '../src/services/written.ts';
import { parseText } from '../src/text/parse.ts';

describe('words that move', () => {
  const before = { uri: 'file:///gully/a.shelter', text: 'one two\nthree four', file: parseText('').value };
  it.each<[string, string, [number, number], [number, number]]>([
    ['unchanged', 'one two\nthree four', [4, 7], [4, 7]],
    ['text before them', 'zero one two\nthree four', [4, 7], [9, 12]],
    ['text after them', 'one two\nthree four five', [4, 7], [4, 7]],
    ['typing at their end', 'one twos\nthree four', [4, 7], [4, 8]],
    ['a new line at their end', 'one two\nzero\nthree four', [4, 7], [4, 7]],
    ['their middle changed', 'one tWo\nthree four', [4, 7], [4, 7]],
    ['gone', 'one \nthree four', [4, 7], [4, 4]],
  ])('%s', (_, after, [start, end], [newStart, newEnd]) => {
    expect(moved({ start, end }, { ...before }, after)).toEqual({ start: newStart, end: newEnd });
  });
});
