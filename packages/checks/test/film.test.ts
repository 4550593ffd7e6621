import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcRadius, filmLoad, liftedPull, stripPull } from '../src/film-pull.ts';
import { checkOf } from '../src/registry.ts';
import { fastening, finding, findings, inputOf, sprungHouse, use, withCover } from './houses.ts';

const house = sprungHouse();
const cover = house.covers[0]!;

function load(shelter = house) {
  const found = filmLoad(shelter, shelter.covers[0]!);
  if ('reason' in found) throw new Error(found.reason);
  return found;
}

describe('film lifted off its frames', () => {
  it('is an arc whose length and chord agree: L / c = α / sin α', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.0001, max: 20, noNaN: true }), (ratio) => {
        const half = ratio / (2 * arcRadius(ratio, 1));
        expect(half / Math.sin(half) / ratio).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is in balance: T = p R at the stretched length', () => {
    const { pull, radius } = liftedPull(load(), 300);
    expect(pull / (300 * radius)).toBeCloseTo(1, 6);
  });

  it('pulls more the stronger the suction, and none at all without it', () => {
    expect(liftedPull(load(), 0).pull).toBeLessThan(1e-6);
    expect(liftedPull(load(), 400).pull).toBeGreaterThan(liftedPull(load(), 300).pull);
  });

  it('as a strip is in balance: T s²-parabola with its own stretch', () => {
    const { pull, sag } = stripPull(load(), 1.2, 200);
    const stretch = load().resting + load().panel.stiffness * (8 / 3) * (sag / 1.2) ** 2;
    expect(pull / stretch).toBeCloseTo(1, 6);
  });
});

describe('film stress and fastenings', () => {
  it('falls with a thicker film', () => {
    const skin = { ...(cover.skin as Extract<typeof cover.skin, { kind: 'film' }>), thickness: 300e-6 };
    expect(use('film-stress', withCover(house, { skin }))).toBeLessThan(use('film-stress', house));
  });

  it('is not checked where nothing was said to hold the edge', () => {
    expect(finding('fastening-pull', house).verdict).toBe('not checked');
  });

  it('asks how far apart single pieces are', () => {
    const unsaid = withCover(house, { fastening: fastening(150, 'piece') });
    expect(finding('fastening-pull', unsaid).reason).toMatch(/how far apart/);
    const said = withCover(house, { fastening: fastening(150, 'piece'), fasteningSpacing: 0.5 });
    expect(finding('fastening-pull', said).utilisation).toBeGreaterThan(0);
  });

  it('holds half as well with half the rating', () => {
    const at = (holds: number) => use('fastening-pull', withCover(house, { fastening: fastening(holds) }));
    expect(at(1000)).toBeCloseTo(2 * at(2000), 9);
  });

  it('brings straps the lift of their strip', () => {
    const strapped = withCover(house, {
      fastening: fastening(2000),
      straps: { item: fastening(1500, 'piece'), spacing: 1.2 },
    });
    const [edge, strap] = findings('fastening-pull', strapped);
    expect(edge?.part).toBe('cover-roof');
    expect(strap?.demand?.kind).toBe('force');
    const at = (spacing: number) =>
      withCover(strapped, { straps: { item: fastening(1500, 'piece'), spacing } });
    const closer = at(0.6);
    const pull = (spacing: number): number => findings('fastening-pull', at(spacing))[1]!.demand!.value;
    // Within the edge strip of 0.9 m all of the strap's breadth has the edge's suction; beyond it less.
    expect(pull(0.6)).toBeCloseTo(2 * pull(0.3), 6);
    expect(pull(1.2)).toBeLessThan(2 * pull(0.6));
    expect(pull(1.2)).toBeGreaterThan(1.5 * pull(0.6));
    expect(strap?.demand?.value).toBeCloseTo(pull(1.2), 9);
    expect(use('film-stress', closer)).toBeLessThan(use('film-stress', strapped));
  });

  it('uses more of the film the stronger the gust', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 4, noNaN: true }), (scale) => {
        const [limit] = checkOf('film-stress')!.limits!(inputOf(house));
        if (limit?.by !== 'pressure') throw new Error('the film is asked by the wind pressure');
        expect(limit.use(scale * 1.1)!.utilisation).toBeGreaterThanOrEqual(limit.use(scale)!.utilisation);
      }),
      { numRuns: 30 },
    );
  });
});

describe('flapping and slack', () => {
  it('lies still once it is pulled tight enough: u falls with the pull that is left', () => {
    const loose = use('flutter', withCover(house, { tension: 100 }));
    const tight = use('flutter', withCover(house, { tension: 400 }));
    expect(tight).toBeLessThan(loose);
  });

  it('hangs f = s √(3 ε / 8) when hot', () => {
    const hot = { ...house, site: { ...house.site, hottest: 60 } };
    const film = cover.skin as Extract<typeof cover.skin, { kind: 'film' }>;
    const strain = film.expansion * 40 - (0.5 * cover.tension) / (film.modulus * film.thickness);
    expect(finding('hot-slack', hot).demand?.value).toBeCloseTo(
      house.roof.spacing * Math.sqrt((3 * strain) / 8),
      9,
    );
  });

  it('does not hang at all at the temperature it was fitted at', () => {
    const mild = { ...house, site: { ...house.site, hottest: cover.fittedAt } };
    expect(finding('hot-slack', mild).demand?.value).toBe(0);
  });
});
