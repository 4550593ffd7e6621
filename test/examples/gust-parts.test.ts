/** Every part of every example that the wind loads is in the order of failure, or listed under it with the reason. */
import { type Evaluation, messageText } from '@tautline/checks';
import { beforeAll, describe, expect, it } from 'vitest';
import { load, verdictsOf } from '../../packages/cli/src/index.ts';
import { day, flawed, folder, sound } from './fixture.ts';

/** What stands under the roof or is no thing: the wind does not load it. */
const windless = new Set(['crops', 'things', 'requirements', 'acceptances', 'assumed', 'unmodelled', 'site']);

/** Ids of all parts of a model, found by walking it and not by asking the ranking what it knows. */
function partsOf(value: unknown, ids = new Set<string>()): Set<string> {
  if (Array.isArray(value)) for (const one of value) partsOf(one, ids);
  else if (typeof value === 'object' && value !== null) {
    // A stock item has an id and an origin too, but also a title.
    if ('id' in value && 'origin' in value && !('title' in value)) ids.add(String(value.id));
    for (const [key, inner] of Object.entries(value)) if (!windless.has(key)) partsOf(inner, ids);
  }
  return ids;
}

let evaluations: readonly { readonly name: string; readonly evaluation: Evaluation }[] = [];
beforeAll(async () => {
  const files = [...sound, ...flawed].map((name) => folder + name);
  evaluations = verdictsOf(await load(files), day).shelters.flatMap(({ loaded, evaluation }) =>
    evaluation === undefined ? [] : [{ name: loaded.name, evaluation }],
  );
}, 120_000);

describe('the order of failure', () => {
  it('is there for every example', () => {
    expect(evaluations.length).toBeGreaterThanOrEqual(sound.length + flawed.length);
    for (const { name, evaluation } of evaluations) expect(evaluation.gusts, name).toBeDefined();
  });

  it('holds each part that the wind loads, or says why not', () => {
    for (const { name, evaluation } of evaluations) {
      const { failures, unranked } = evaluation.gusts!;
      const ranked = new Set(failures.map(({ part }) => part));
      const told = new Map(unranked.map((one) => [one.part, one]));
      const all = partsOf(evaluation.shelter);
      all.delete('shelter');
      for (const id of all) {
        const one = told.get(id);
        expect(ranked.has(id) !== (one !== undefined), `${name}: ${id}`).toBe(true);
        if (one !== undefined)
          expect(messageText(one.why, 'metric').length, `${name}: ${id}`).toBeGreaterThan(20);
      }
      // The edge of a cover, the screws of a sheet and the rail of an end are no part of their own where nothing was said to hold it.
      for (const id of told.keys())
        expect(all.has(id.replace(/\/(?:edge|screws|rail)$/, '')), `${name}: ${id}`).toBe(true);
    }
  });

  it('ranks film and mesh of sides and ends, straps, anchors of ridge cables and caps', () => {
    const checks = (name: string): string[] =>
      evaluations.find((one) => one.name === name)!.evaluation.gusts!.failures.map(({ check }) => check);
    expect(checks('screen-house')).toContain('wall-cover');
    expect(checks('conduit-arch')).toContain('wall-cover');
    expect(checks('seedling-cap-flawed')).toContain('overturning');
    const told = evaluations.flatMap(({ evaluation }) => evaluation.gusts!.failures.map(({ what }) => what));
    expect(told.some((what) => /strap.* gives/i.test(what))).toBe(true);
  });

  it('lets sacrificial parts of sound examples go first, with the margin that storm-order asks for', () => {
    const meant = evaluations.filter(
      ({ name, evaluation }) =>
        !name.endsWith('-flawed') && evaluation.gusts!.failures.some(({ sacrificial }) => sacrificial),
    );
    expect(meant.length).toBeGreaterThan(0);
    for (const { name, evaluation } of meant) {
      const { failures } = evaluation.gusts!;
      const goes = failures.find(({ sacrificial }) => sacrificial)!;
      const stands = failures.find(({ sacrificial }) => !sacrificial)!;
      expect(stands.gust / goes.gust, name).toBeGreaterThanOrEqual(1.15);
    }
  });

  it('takes the film-off gust from the first part that is not meant to go, with its margin', () => {
    for (const { name, evaluation } of evaluations) {
      const { failures, filmOff, withoutWind } = evaluation.gusts!;
      const first = failures.find(({ sacrificial }) => !sacrificial);
      expect(filmOff?.first ?? withoutWind, name).toEqual(first);
      if (filmOff !== undefined) expect(filmOff.gust, name).toBeCloseTo(0.8 * first!.gust, 9);
    }
  });
});
