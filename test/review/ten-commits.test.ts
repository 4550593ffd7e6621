/** Ten commits, each another kind of change, and what a review says of each. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day, ScriptedRepository, tautline } from './repository.ts';

const site = `site terrace {
  gust 26 m/s once per 50 yr
  exposure sheltered
  elevation 480 m
  rain 110 mm/h
  soil loam
  coldest 2 degC
  hottest 60 degC
  latitude -28 deg
  basis asce7-asd
  hazard low
}
prices { price of pvc40-25 6.20 per 20 ft; price of pvc40-32 9.10 per 20 ft }
`;
const arch = `import "site.shelter"

/** Plugs in spring. */
shelter plug-arch on terrace {
  footprint 13 ft by 40 ft
  bows spaced 2 ft 6 in {
    of pvc40-25
    shape elastic
    length 20 ft
    foot stub of rebar-16 { length 6 ft; deep 3 ft 6 in; held clamped }
  }
  ridge rail of lumber-2x4 {
    frames tied
    posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } }
  }
  purlins 2 of pvc40-20 { at 5 ft; at 15 ft; joint lashing }
  cover roof with film-uv-150 { fastened by board-1x3; strapped by strap-25 every 2 ft 6 in; tension 200 N/m; installed 2026-09-01 }
}
`;
const gable = `import "site.shelter"

/** Another house. */
shelter salad-gable on terrace {
  footprint 5 m by 12 m
  posts sides of lumber-4x4 spaced 3 m { height 2.2 m; foot hole { deep 3 ft; across 12 in } }
  rafters spaced 1 m of lumber-2x4 { shape gable; pitch 25 deg; tie of lumber-1x4 }
  cover roof with film-uv-200 { fastened by board-1x3; tension 200 N/m }
}
`;

interface Json {
  readonly headline: string;
  readonly shelters: readonly {
    readonly name: string;
    readonly file: string;
    readonly change: string;
    readonly renamedFrom?: string;
    readonly movedFrom?: string;
    readonly facts: Readonly<
      Record<
        string,
        readonly {
          readonly path: readonly string[];
          readonly change: string;
          readonly before?: string;
          readonly after?: string;
        }[]
      >
    >;
    readonly parts: readonly { readonly part: string; readonly change: string }[];
    readonly findings: readonly { readonly change: string; readonly id: string }[];
    readonly acceptances: readonly { readonly change: string; readonly check: string }[];
    readonly governing: {
      readonly before?: { utilisation: number };
      readonly after?: { utilisation: number };
    };
    readonly cost: { readonly before?: { total: number }; readonly after?: { total: number } };
    readonly materials: readonly {
      readonly item?: string;
      readonly before?: number;
      readonly after?: number;
    }[];
  }[];
}

let repository: ScriptedRepository;

/** What the commit whose message is `tag` changed. */
async function reviewed(tag: string): Promise<Json & { readonly code: number }> {
  const { code, out, err } = await tautline(
    'review',
    `${tag}^`,
    tag,
    '--repository',
    repository.folder,
    '--format',
    'json',
    '--units',
    'metric',
    '--on',
    day,
  );
  expect(err).toBe('');
  return { ...(JSON.parse(out) as Json), code };
}

const only = ({ shelters }: Json, name: string) => {
  const found = shelters.find((shelter) => shelter.name === name);
  if (!found) throw new Error(`the review does not tell of ${name}`);
  return found;
};

beforeAll(() => {
  repository = new ScriptedRepository();
  const commit = (tag: string): void => {
    repository.commit(tag);
    repository.git('tag', tag);
  };
  repository.write('site.shelter', site);
  repository.write('plugs.shelter', arch);
  commit('start');
  repository.move('plugs.shelter', 'house.shelter');
  commit('rename-file');
  repository.change('house.shelter', 'shelter plug-arch', 'shelter seed-arch');
  commit('rename-shelter');
  repository.change('house.shelter', '13 ft by 40 ft', '3.9624 m by 480 in');
  repository.change('house.shelter', 'spaced 2 ft 6 in', 'spaced 762 mm');
  commit('units');
  repository.change(
    'house.shelter',
    '/** Plugs in spring. */',
    '/** Seedlings in spring. */ // ask again in May',
  );
  repository.change('house.shelter', '    of pvc40-25\n', '    of pvc40-25 // from the yard\n');
  commit('comments');
  repository.change(
    'house.shelter',
    '    shape elastic\n    length 20 ft\n',
    '    length 20 ft; shape elastic\n\n',
  );
  commit('layout');
  repository.change('house.shelter', 'spaced 762 mm', 'spaced 4 ft');
  commit('spacing');
  repository.change('house.shelter', 'of pvc40-25 ', 'of pvc40-32 ');
  commit('stock');
  repository.change('site.shelter', 'gust 26 m/s', 'gust 34 m/s');
  commit('site');
  repository.change(
    'house.shelter',
    '  purlins 2',
    '  accept locked-in-stress because "it has stood so for years" until 2027-06-30\n  purlins 2',
  );
  commit('acceptance');
  repository.remove('house.shelter');
  repository.write('salad.shelter', gable);
  commit('swap-houses');
}, 60_000);
afterAll(() => repository.dispose());

describe('ten commits', () => {
  it('follows a renamed file, and finds no design change', async () => {
    const review = await reviewed('rename-file');
    expect(only(review, 'plug-arch')).toMatchObject({
      change: 'unchanged',
      file: 'house.shelter',
      movedFrom: 'plugs.shelter',
    });
    expect(review.headline).toMatch(/^No design change\./);
    expect(review.code).toBe(0);
  });

  it('follows a renamed shelter', async () => {
    const review = await reviewed('rename-shelter');
    expect(review.shelters).toHaveLength(1);
    expect(only(review, 'seed-arch')).toMatchObject({ change: 'unchanged', renamedFrom: 'plug-arch' });
    expect(review.headline).toMatch(/^No design change\./);
  });

  it.each(['units', 'comments', 'layout'])(
    'takes a commit that touches only %s for no design change',
    async (tag) => {
      const review = await reviewed(tag);
      const shelter = only(review, 'seed-arch');
      expect(review.headline).toMatch(/^No design change\./);
      expect(shelter.change).toBe('unchanged');
      expect(Object.values(shelter.facts).flat()).toEqual([]);
      expect([...shelter.findings, ...shelter.materials, ...shelter.parts]).toEqual([]);
      expect(review.code).toBe(0);
    },
  );

  it('tells a spacing with its findings, materials and cost', async () => {
    const shelter = only(await reviewed('spacing'), 'seed-arch');
    expect(shelter.change).toBe('changed');
    expect(shelter.facts['design']).toEqual([
      { path: ['bows', 'spaced'], change: 'changed', before: '0.762 m', after: '1.2192 m' },
    ]);
    expect(shelter.parts).toContainEqual({ part: 'bows', change: 'changed' });
    // 40 ft hold 17 bows every 2 ft 6 in and 11 bows every 4 ft, each one 20 ft pipe of 6.20.
    const bows = shelter.materials.find(({ item }) => item === 'pvc40-25');
    expect(bows?.before).toBeCloseTo(17 * 6.096, 3);
    expect(bows?.after).toBeCloseTo(11 * 6.096, 3);
    expect(shelter.cost.before!.total - shelter.cost.after!.total).toBeCloseTo(6 * 6.2, 6);
    expect(shelter.governing.after!.utilisation).toBeGreaterThan(shelter.governing.before!.utilisation);
    expect(shelter.findings.length).toBeGreaterThan(0);
  });

  it('tells a swap of stock', async () => {
    const shelter = only(await reviewed('stock'), 'seed-arch');
    expect(shelter.facts['design']).toEqual([
      { path: ['bows', 'of'], change: 'changed', before: 'pvc40-25', after: 'pvc40-32' },
    ]);
    const used = Object.fromEntries(shelter.materials.map((line) => [line.item, [line.before, line.after]]));
    expect(used['pvc40-25']?.[1]).toBeUndefined();
    expect(used['pvc40-32']?.[0]).toBeUndefined();
    expect(shelter.cost.after!.total - shelter.cost.before!.total).toBeCloseTo(11 * (9.1 - 6.2), 6);
  });

  it('tells a change of the site in an imported file', async () => {
    const review = await reviewed('site');
    const shelter = only(review, 'seed-arch');
    expect(shelter.change).toBe('changed');
    expect(shelter.facts['site']).toEqual([
      {
        path: ['terrace', 'gust'],
        change: 'changed',
        before: '26 m/s once per 50 yr',
        after: '34 m/s once per 50 yr',
      },
    ]);
    expect(shelter.facts['design']).toEqual([]);
    expect(shelter.parts).toEqual([]);
    expect(shelter.findings.some(({ change }) => change === 'came' || change === 'worse')).toBe(true);
  });

  it('tells an acceptance, and what it covers', async () => {
    const review = await reviewed('acceptance');
    const shelter = only(review, 'seed-arch');
    expect(shelter.change).toBe('no design change');
    expect(shelter.acceptances).toEqual([
      {
        change: 'added',
        check: 'locked-in-stress',
        because: 'it has stood so for years',
        until: '2027-06-30',
      },
    ]);
    expect(shelter.findings.map(({ change, id }) => [change, id])).toEqual([
      ['accepted', 'locked-in-stress'],
    ]);
    expect(review.code).toBe(0);
  });

  it('tells a shelter that has gone and one that is new', async () => {
    const review = await reviewed('swap-houses');
    expect(review.shelters.map(({ name, change }) => [name, change])).toEqual([
      ['salad-gable', 'added'],
      ['seed-arch', 'removed'],
    ]);
  });
});

describe('the working tree', () => {
  it('is what BASE alone is compared with, files not yet added included', async () => {
    repository.write('extra.shelter', arch.replace('plug-arch', 'extra-arch'));
    const { out } = await tautline(
      'review',
      'HEAD',
      '--repository',
      repository.folder,
      '--format',
      'json',
      '--on',
      day,
    );
    repository.remove('extra.shelter');
    const review = JSON.parse(out) as Json;
    expect(only(review, 'extra-arch').change).toBe('added');
    expect(only(review, 'salad-gable').change).toBe('unchanged');
  });
});
