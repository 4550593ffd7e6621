import { analyseFrame } from '@tautline/structure';
import { describe, expect, it } from 'vitest';
import { atGust, gustOrder } from '../src/index.ts';
import { fastening, ridgedHouse, withCover } from './houses.ts';

const house = withCover(ridgedHouse(), { fastening: fastening(1500) });
const analysed = analyseFrame(house);
if (!analysed.ok) throw new Error(analysed.reason);
const { analysis } = analysed;

describe('parts at one gust', () => {
  it('have reached their limit just where the order of failure says', () => {
    const known = gustOrder(house, analysis).failures.filter(
      ({ estimated, check, what }) => !estimated && !/whole frame|no balance/.test(what) && check !== '',
    );
    expect(known.length).toBeGreaterThan(3);
    for (const { gust, part, check, what } of known) {
      const use = atGust(house, analysis, gust).uses.find(
        (one) => one.part === part && one.check === check && one.what === what,
      );
      expect(use?.use, `${what} at ${gust}`).toBeCloseTo(1, 1);
    }
  });
  it("are those of the analysis at the site's gust, and calm without wind", () => {
    const same = atGust(house, analysis, house.site.gust);
    const moved = (responses: typeof analysis.responses) =>
      responses.map(({ displacements }) => Math.max(...displacements.map(({ dx }) => Math.abs(dx))));
    for (const [index, value] of moved(same.analysis.responses).entries())
      expect(value).toBeCloseTo(moved(analysis.responses)[index] ?? Number.NaN, 6);
    const calm = atGust(house, analysis, 0);
    expect(calm.breaks).toBeUndefined();
    expect(Math.max(...calm.uses.map(({ use }) => use))).toBeLessThan(
      Math.max(...same.uses.map(({ use }) => use)),
    );
  });
  it('are refused at what is no gust', () => {
    expect(() => atGust(house, analysis, Number.NaN)).toThrow(RangeError);
    expect(() => atGust(house, analysis, -1)).toThrow(RangeError);
  });
});
