/** A foot that goes less deep is never held the better for it, whatever is said of it or not. */
import { describe, expect, it } from 'vitest';
import { evaluated } from '../reference/spec-loader.ts';

const row = (foot: string): string => `
shelter row on test-plot {
  footprint 1.5 m by 6 m
  bows spaced 1.2 m { of emt-21; shape arc; rise 0.7 m; foot ${foot} }
  ends open
  cover roof with film-uv-150 { fastened by board-1x3; tension 250 N/m }
}`;

const posts = (foot: string): string => `
shelter shed on test-plot {
  footprint 3 m by 6 m
  posts sides of lumber-4x4 spaced 2 m { height 2 m; foot ${foot}; rail of lumber-2x6 }
  rafters spaced 1 m { of lumber-2x4; shape gable; pitch 25 deg; tie of lumber-2x4 at eave }
  sides open
  ends open
  cover roof with film-uv-150 { fastened by board-1x3; tension 250 N/m }
}`;

const feet: readonly (readonly [string, (foot: string) => string, (depth: number) => string])[] = [
  ['stubs of one length, nothing said', row, (deep) => `stub of rebar-12 { length 0.9 m; deep ${deep} m }`],
  [
    'stubs said to be clamped',
    row,
    (deep) => `stub of rebar-12 { length 1.2 m; deep ${deep} m; held clamped }`,
  ],
  ['driven legs', row, (deep) => `driven { deep ${deep} m }`],
  ['posts in holes', posts, (deep) => `hole { deep ${deep} m; across 0.3 m }`],
  ['posts in concrete', posts, (deep) => `concrete { deep ${deep} m; across 0.3 m }`],
];
const depths = [0.15, 0.25, 0.35, 0.49, 0.61, 0.75];
const asked = ['lateral-foot', 'pull-out', 'foot-bearing', 'racking'];

describe.each(feet)('%s', (_, house, foot) => {
  it('use no less of the ground, the less deep they go', async () => {
    let deeper: Map<string, number> | undefined;
    for (const depth of [...depths].reverse()) {
      const evaluation = await evaluated(house(foot(depth)));
      const uses = new Map<string, number>();
      for (const { id, utilisation } of evaluation.findings)
        if (asked.includes(id) && utilisation !== undefined)
          uses.set(id, Math.max(utilisation, uses.get(id) ?? 0));
      expect(uses.get('lateral-foot') ?? uses.get('racking'), `${depth} m`).toBeDefined();
      for (const [id, use] of uses) {
        expect(use, `${id} at ${depth} m`).toBeLessThanOrEqual(100);
        const before = deeper?.get(id);
        if (before !== undefined && id === 'racking')
          expect(use, `${id} at ${depth} m`).toBeGreaterThanOrEqual(before * (1 - 1e-6));
        // Where the feet stop being clamped they are turned no more, and the frame leans on them otherwise.
        else if (before !== undefined && depth >= 0.3)
          expect(use, `${id} at ${depth} m`).toBeGreaterThanOrEqual(before * (1 - 1e-6));
      }
      deeper = uses;
    }
  }, 60_000);
});

it('a stub drawn up out of the ground does not become clamped by it', async () => {
  const fixity = async (deep: number) => {
    const { roof } = (await evaluated(row(`stub of rebar-12 { length 0.9 m; deep ${deep} m }`))).shelter;
    return roof.type === 'bows' ? roof.foot?.fixity : undefined;
  };
  expect(await fixity(0.61)).toBe(await fixity(0.49));
  expect(await fixity(0.2)).toBe('pinned');
}, 60_000);
