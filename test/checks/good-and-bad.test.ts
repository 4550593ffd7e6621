/**
 * Every check is seen to fail on a bad spec and not to fail on a good one. Most are covered by the examples;
 * the pairs here are for checks that no example is flawed in. The full tier's two checks have their own tests.
 */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checks } from '@tautline/checks';
import { beforeAll, describe, expect, it } from 'vitest';
import { load, verdictsOf } from '../../packages/cli/src/index.ts';
import { evaluated } from '../reference/spec-loader.ts';

const day = '2026-11-25';
const folder = fileURLToPath(new URL('../../examples/', import.meta.url));

/** An arch with places for one thing more, and for another cover, bow or foot. */
const house = (
  change: { bows?: string; cover?: string; more?: string } = {},
): string => `shelter house on test-plot {
  footprint 12 ft by 30 ft
  bows spaced 4 ft { ${change.bows ?? 'of emt-27; shape cold-bent; rise 8 ft; leg 2 ft'}; foot driven { driven 2 ft 6 in; held clamped } }
  ends open
  ${change.cover ?? 'cover roof with film-uv-150 { fastened by channel-spring every 2 ft; tension 250 N/m }'}
  ${change.more ?? ''}
}`;

const sheeted = (purlins: number): string =>
  house({
    cover: 'cover roof with plain-sheet { fastened by channel-spring every 2 ft }',
    more: `purlins ${purlins} of lumber-2x4\n}\n/** A clear sheet. Source: from memory. */\nsheet plain-sheet {\n  weighs 1.2 kg/m2\n  thickness 0.8 mm\n  covers 24 in\n  spans 24 in\n  light 0.85\n  life 8 yr\n  sold 8 ft long`,
  });

const screened = (porosity: number): string =>
  house({
    more: `cover sides with net { fastened by channel-spring every 2 ft; up to 4 ft }\n}\n/** A net. Source: from memory. */\nmesh net {\n  porosity ${porosity}\n  weighs 90 g/m2\n  strength 8 kN/m\n  life 5 yr\n  shade 0.3\n  sold 6 ft wide by 100 ft long`,
  });

const aluminium = (rail: string): string =>
  house({
    more: `purlins 3 of ${rail}\n}\n/** Soft metal. Source: from memory. */\nmaterial soft-metal {\n  family aluminium\n  density 2700 kg/m3\n  modulus 69 GPa\n  bending-strength 150 MPa\n}\n/** Tube. Source: from memory. */\npipe soft-tube {\n  outside 25 mm\n  wall 1.5 mm\n  material soft-metal\n  sold 6 m long`,
  });

const pairs: Readonly<Record<string, { readonly good: string; readonly bad: string }>> = {
  'bend-radius': {
    good: house(),
    bad: house({ bows: 'of emt-27; shape cold-bent; rise 6 ft; leg 5 ft 10 in' }),
  },
  'purlin-span': { good: sheeted(11), bad: sheeted(2) },
  abrasion: {
    good: house({ bows: 'of green-stick-28; shape elastic; rise 5 ft; wrapped' }),
    bad: house({ bows: 'of green-stick-28; shape elastic; rise 5 ft' }),
  },
  'dissimilar-metals': { good: aluminium('emt-21'), bad: aluminium('soft-tube') },
  light: {
    good: house(),
    bad: house({
      cover:
        'cover roof with milky { layers 2; fastened by channel-spring every 2 ft; tension 250 N/m }\n}\n/** Milky film. Source: from memory. */\nfilm milky like film-uv-150 {\n  light 0.6',
    }),
  },
  'mesh-airflow': { good: screened(0.6), bad: screened(0.15) },
  runoff: {
    good: house({ more: 'gutter sides across 8 in { depth 6 in; fall 1:100 }' }),
    bad: house({ more: 'gutter sides across 1 in { depth 1 in; fall 1:500 }' }),
  },
};

async function verdictsIn(text: string, id: string): Promise<string[]> {
  const evaluation = await evaluated(text, day);
  return evaluation.findings.filter((finding) => finding.id === id).map((finding) => finding.verdict);
}

describe('checks that no example is flawed in', () => {
  it.each(Object.keys(pairs))('%s fails on the bad spec and not on the good one', async (id) => {
    const pair = pairs[id];
    if (pair === undefined) throw new Error(id);
    expect(await verdictsIn(pair.bad, id)).toContain('fails');
    expect(await verdictsIn(pair.good, id)).not.toContain('fails');
  });
});

describe('every other check', () => {
  /** Judged elsewhere: the whole house in space; what the site leaves unsaid; what the crop drinks. */
  const elsewhere = new Set(['whole-house', 'tier-difference', 'site-facts', 'irrigation']);
  const failed = new Set<string>();
  const held = new Set<string>();

  beforeAll(async () => {
    const files = readdirSync(folder).filter((name) => name.endsWith('.shelter'));
    const verdicts = verdictsOf(await load(files.map((name) => folder + name)), day, { gusts: false });
    for (const { findings } of verdicts.shelters) {
      for (const { finding } of findings) (finding.verdict === 'fails' ? failed : held).add(finding.id);
    }
  }, 120_000);

  it.each(checks.map((check) => check.id).filter((id) => !(id in pairs) && !elsewhere.has(id)))(
    '%s fails in an example and holds in another',
    (id) => {
      expect(failed.has(id)).toBe(true);
      expect(held.has(id)).toBe(true);
    },
  );
});
