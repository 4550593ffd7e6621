import { expect, it } from 'vitest';
import { mostAlike } from '../src/client/alike.ts';

const house = [
  'shelter house on field {',
  '  footprint 3 m by 6 m',
  '  bows spaced 1 m',
  '  ends open',
  '}',
].join('\n');
const renamed = house.replace('shelter house', 'shelter plug-house');
const other = 'site field {\n  gust 30 m/s\n  rain 60 mm/h\n}';

it('finds the text of a renamed file, whatever its line ends', () => {
  expect(mostAlike(renamed, [other, house])).toBe(house);
  const windows = house.replaceAll('\n', '\r\n');
  expect(mostAlike(renamed, [windows, other])).toBe(windows);
});

it('takes no text that has less than half in common', () => {
  expect(mostAlike(house, [other, ''])).toBe(undefined);
  expect(mostAlike('', [''])).toBe(undefined);
});
