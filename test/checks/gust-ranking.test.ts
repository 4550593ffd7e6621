/** A part is above the site's gust in the ranking just when its own check passes there, for the parts of the specs. */
import type { LoadedWorkspace } from '@tautline/language';
import { beforeAll, describe, expect, it } from 'vitest';
import { judgeSpec, loadSpecs } from './specs.ts';

let workspace: LoadedWorkspace;
beforeAll(async () => {
  workspace = await loadSpecs();
});

const ranked = [
  'bow-buckling',
  'foot-bearing',
  'post-buckling',
  'splice-overlap',
  'purlin-span',
  'sheet-hold',
  'over-span',
];

describe('the order of failure', () => {
  it.each(ranked)('agrees with %s on its good and its bad spec', (id) => {
    for (const side of ['good', 'bad']) {
      const { shelter, findings, gusts } = judgeSpec(workspace, `${id}.${side}`, { on: '2026-11-25' });
      const own = findings.filter(
        (finding) => finding.id === id && /wind|gust|suction|pressure/.test(finding.loadCase ?? ''),
      );
      for (const part of new Set(own.map((finding) => finding.part))) {
        const worst = Math.max(...own.filter((one) => one.part === part).map((one) => one.utilisation ?? 0));
        const found = gusts?.failures.find((failure) => failure.check === id && failure.part === part);
        expect((found?.gust ?? Number.POSITIVE_INFINITY) <= shelter.site.gust, `${side} ${part}`).toBe(
          worst >= 1,
        );
      }
    }
  });

  it.each(['bow-buckling', 'foot-bearing', 'post-buckling', 'over-span', 'sheet-hold'])(
    'names a part that %s sets the limit of',
    (id) => {
      const { gusts } = judgeSpec(workspace, `${id}.bad`, { on: '2026-11-25' });
      expect(gusts?.failures.map(({ check }) => check)).toContain(id);
    },
  );

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
