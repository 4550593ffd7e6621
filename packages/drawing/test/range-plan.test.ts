import { originOf, type Range } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { rangePlanView, toSvg } from '../src/index.ts';
import { smallArch, stubArch } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

const gap = 0.8;
const rangeOf = (shelters: readonly (typeof smallArch)[]): Range => {
  let x = 0;
  const places = shelters.map((shelter, index) => {
    const place = { id: `stand-${index + 1}`, origin: originOf('stand'), shelter, x };
    x += shelter.width + gap;
    return place;
  });
  if (!('member' in smallArch.roof)) throw new Error('the fixture has no bows');
  const tie = { member: smallArch.roof.member, spacing: 2, origin: originOf('tie') };
  return {
    name: 'rows',
    origin: originOf('rows'),
    places,
    gap,
    tie,
    width: x - gap,
    acceptances: [],
    assumed: [],
    unmodelled: [],
  };
};

describe('a range from above', () => {
  for (const [title, range] of [
    ['of equal shelters', rangeOf([smallArch, smallArch, smallArch])],
    ['of unlike shelters', rangeOf([smallArch, stubArch])],
  ] as const)
    it(`${title} is well-formed, names each and measures widths, gap and all`, () => {
      const drawing = rangePlanView(range, { system: 'metric' });
      const svg = toSvg(drawing, 'paper');
      expect(xmlProblems(svg)).toEqual([]);
      expect(overlappingTexts(drawing)).toEqual([]);
      range.places.forEach(({ shelter }, index) => {
        expect(svg).toContain(`${index + 1}  ${shelter.name}`);
      });
      for (const part of ['stand-1', 'range', 'tied']) expect(svg).toContain(`data-part="${part}"`);
      expect(svg).toContain('0.8 m');
      expect(svg).toContain('all ');
    });
});
