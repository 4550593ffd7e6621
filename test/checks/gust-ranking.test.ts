/**
 * The verdict at the site's loads and the order of failure tell the same: a part is past its limit at the site just
 * when it is ranked at or below the site's gust, for every check, over every spec and every example.
 */
import { checks } from '@tautline/checks';
import type { LoadedWorkspace } from '@tautline/language';
import { beforeAll, describe, expect, it } from 'vitest';
import { load, verdictsOf } from '../../packages/cli/src/index.ts';
import { day, flawed, folder, sound } from '../examples/fixture.ts';
import { disagreements } from './disagreements.ts';
import { judgeSpec, loadSpecs } from './specs.ts';

describe('the order of failure', () => {
  let workspace: LoadedWorkspace;
  beforeAll(async () => {
    workspace = await loadSpecs();
  });

  it.each(checks.map(({ id }) => id))('agrees with every check on the specs of %s', (id) => {
    for (const side of ['good', 'bad']) {
      const evaluation = judgeSpec(workspace, `${id}.${side}`, { on: '2026-11-25' });
      expect(disagreements(evaluation), side).toEqual([]);
    }
  });

  it('agrees with every check on every example', async () => {
    const files = [...sound, ...flawed].map((name) => folder + name);
    const verdicts = verdictsOf(await load(files), day).shelters;
    const all = verdicts.flatMap(({ loaded, evaluation }) =>
      evaluation === undefined ? [] : disagreements(evaluation).map((one) => `${loaded.name}: ${one}`),
    );
    expect(verdicts.length).toBeGreaterThan(40);
    expect(all).toEqual([]);
  }, 120_000);

  it('gives no gust to have the film off by where something gives way without wind', () => {
    const calm = checks.flatMap(({ id }) =>
      ['good', 'bad'].flatMap(
        (side) => judgeSpec(workspace, `${id}.${side}`, { on: '2026-11-25' }).gusts ?? [],
      ),
    );
    expect(calm.filter(({ withoutWind }) => withoutWind !== undefined).length).toBeGreaterThan(5);
    for (const { filmOff, withoutWind } of calm) {
      expect(filmOff !== undefined && withoutWind !== undefined).toBe(false);
      expect(filmOff?.gust ?? 1).toBeGreaterThan(0);
    }
  }, 120_000);

  it('is left when it is called off', () => {
    // As often as the frame asks by itself, and then a few times more.
    const asks = (more: number, gusts: boolean): number => {
      let asked = 0;
      judgeSpec(workspace, 'post-buckling.good', { gusts, cancelled: () => ++asked > more });
      return asked;
    };
    const frame = asks(Number.MAX_VALUE, false);
    expect(() => asks(frame + 3, true)).toThrow();
  });
});
