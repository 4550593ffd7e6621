import { describe, expect, it } from 'vitest';
import { checks, evaluate, hardestOf } from '../src/index.ts';
import { sprungHouse, withCover } from './houses.ts';

describe('what is used most', () => {
  // Film far past its life is used up many times over, and says nothing of the frame.
  const { findings } = evaluate(withCover(sprungHouse(), { installed: '1990-01-01' }), { on: '2026-11-25' });

  it('is a share of strength or room, not of life, light or stock', () => {
    const life = findings.find(({ id }) => id === 'film-life')!;
    const hardest = hardestOf(findings)!;
    expect(life.nature).toBe('keeping');
    expect(life.utilisation).toBeGreaterThan(1);
    expect(hardestOf([life])).toBe(undefined);
    expect(hardest.nature).toBe(undefined);
    for (const { nature, utilisation } of findings)
      if (nature === undefined) expect(utilisation ?? 0).toBeLessThanOrEqual(hardest.utilisation);
  });

  it('is nothing where nothing has a share', () => {
    expect(hardestOf([])).toBe(undefined);
    expect(hardestOf(findings.filter(({ nature }) => nature !== undefined))).toBe(undefined);
  });

  it('is marked by the check itself', () => {
    for (const { id, nature } of findings)
      expect(nature, id).toBe(checks.find((check) => check.id === id)?.nature);
  });
});
