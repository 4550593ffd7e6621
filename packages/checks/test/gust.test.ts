import { analyseFrame, gustSweep } from '@tautline/structure';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, filmOffMargin, gustOrder } from '../src/index.ts';
import { fastening, finding, findings, origin, ridgedHouse, withCover } from './houses.ts';

const house = withCover(ridgedHouse(), { fastening: fastening(1500) });
const analysed = analyseFrame(house);
if (!analysed.ok) throw new Error(analysed.reason);
const { analysis } = analysed;
const order = gustOrder(house, analysis);

const gustOf = (check: string): number =>
  order.failures.find((failure) => failure.check === check)?.gust ?? Number.POSITIVE_INFINITY;

describe('order in which parts give way', () => {
  it('is ranked from the lowest gust, with the gust by which the film comes off', () => {
    const gusts = order.failures.map((failure) => failure.gust);
    expect(gusts.length).toBeGreaterThan(3);
    expect([...gusts].sort((a, b) => a - b)).toEqual(gusts);
    expect(order.filmOff?.gust).toBeCloseTo(filmOffMargin * gusts[0]!, 9);
  });

  it.each(['over-span', 'pull-out', 'lateral-foot', 'film-stress', 'fastening-pull', 'racking'])(
    "agrees with %s: a part fails its check at the site just when its gust lies below the site's",
    (check) => {
      const windy = findings(check, house).filter((entry) => /wind|gust/i.test(entry.loadCase ?? ''));
      expect(windy.length).toBeGreaterThan(0);
      const worst = Math.max(...windy.map((entry) => entry.utilisation ?? 0));
      expect(gustOf(check) <= house.site.gust).toBe(worst >= 1);
    },
  );

  it("finds the same limits from another site's gust, for the pressure goes with its square", () => {
    const calmer = { ...house, site: { ...house.site, gust: 18 } };
    const again = analyseFrame(calmer);
    if (!again.ok) throw new Error(again.reason);
    const other = gustOrder(calmer, again.analysis);
    for (const check of ['pull-out', 'over-span', 'film-stress', 'lateral-foot']) {
      const found = other.failures.find((failure) => failure.check === check)?.gust ?? Number.NaN;
      expect(found / gustOf(check), check).toBeCloseTo(1, 2);
    }
    // Its clamped ridge posts hold it along, up to a gust that is not searched for from so calm a site.
    expect(gustOf('racking')).toBeGreaterThan(2.5 * calmer.site.gust);
  });

  it('gives a part its limit where its share of it is 1', () => {
    const sweep = gustSweep(house, analysis);
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), (share) => {
        const pull = (response: (typeof analysis.responses)[number]): number =>
          Math.max(...response.reactions.map((reaction) => -reaction.vertical));
        const now = Math.max(
          ...analysis.responses
            .filter((response) => response.load.wind !== undefined && response.load.use !== 'service')
            .map(pull),
        );
        const limit = sweep.limitOf((response) => pull(response) / (share * now));
        expect(limit === undefined).toBe(false);
        expect(limit!.gust > house.site.gust).toBe(share > 1);
      }),
      { numRuns: 8 },
    );
  });
});

describe('a stronger gust', () => {
  it('never lowers what film, feet, bracing and bows have to take, while the frame holds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 12, max: 22, noNaN: true }),
        fc.double({ min: 1.02, max: 1.2, noNaN: true }),
        (gust, more) => {
          const at = (speed: number) => {
            const { findings: all } = evaluate(
              { ...house, site: { ...house.site, gust: speed } },
              { gusts: false },
            );
            return (id: string) =>
              Math.max(...all.filter((entry) => entry.id === id).map((entry) => entry.utilisation ?? 0));
          };
          const calm = at(gust);
          const strong = at(gust * more);
          for (const id of [
            'over-span',
            'pull-out',
            'lateral-foot',
            'racking',
            'film-stress',
            'fastening-pull',
          ])
            expect(strong(id), id).toBeGreaterThanOrEqual(calm(id) - 1e-9);
        },
      ),
      { numRuns: 5 },
    );
  });
});

describe('promises about a storm', () => {
  const wanting = (value: number) => ({
    ...house,
    requirements: [{ id: 'withstand', origin, subject: 'gust', comparison: '>=', value } as const],
  });

  it('withstand a gust below the first failure, and no gust above it', () => {
    const first = order.failures[0]!.gust;
    expect(finding('withstand', wanting(first * 0.95), true).verdict).toBe('passes');
    expect(finding('withstand', wanting(first * 1.05), true).verdict).toBe('fails');
    expect(findings('requirement', wanting(20))).toEqual([]);
  });

  it('ask the sacrificial part to go first with a margin', () => {
    const film = withCover(house, { sacrificial: true });
    expect(finding('storm-order', film, true).verdict).toBe('fails');
    // A film of paper: it goes long before anything else.
    const thin = withCover(film, { skin: { ...house.covers[0]!.skin, yieldStress: 2e5 } as never });
    expect(finding('storm-order', thin, true).verdict).toBe('passes');
  });

  it('say nothing where nothing was promised', () => {
    expect(findings('storm-order', house, true)).toEqual([]);
    expect(findings('withstand', house, true)).toEqual([]);
  });

  it('leave the gusts out on request, unless the spec promises something', () => {
    expect(evaluate(house, { gusts: false }).gusts).toBeUndefined();
    expect(evaluate(wanting(20), { gusts: false }).gusts).toBeDefined();
  });
});
