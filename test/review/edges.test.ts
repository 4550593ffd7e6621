/** Changes at the edges of what a review can say: what has gone, what is broken, what only moved, what only costs. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day, ScriptedRepository, tautline } from './repository.ts';

const site = `import "items.shelter"
site field { gust 22 m/s; soil loam }
project { currency USD }
prices { price of old-line 6.20 per 20 ft; price of spring-film 0.16 per ft2 }
`;
const items = `/** Pipe from the closed line. */
pipe old-line like pvc40-25 { wall 3.4 mm }
/** Film of the spring order. */
film spring-film like film-uv-150 { thickness 160 um }
`;
const arch = (name: string, wide = 12) => `import "site.shelter"
import "items.shelter"
shelter ${name} on field {
  footprint ${wide} ft by 20 ft
  bows spaced 5 ft { of old-line; shape elastic; length 20 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with spring-film { fastened by board-1x3; tension 200 N/m; roll 24 ft }
}
`;

let repository: ScriptedRepository;
const review = (...words: string[]) =>
  tautline('review', ...words, '--repository', repository.folder, '--on', day, '--units', 'metric');
const reviewed = async (tag: string) => {
  const { code, out, err } = await review(`${tag}^`, tag, '--format', 'json');
  expect(err).toBe('');
  return { code, ...JSON.parse(out) };
};
const named = ({ shelters }: { shelters: { name: string }[] }, name: string) =>
  shelters.find((shelter) => shelter.name === name) as never as Record<string, never>;

beforeAll(() => {
  repository = new ScriptedRepository();
  const commit = (tag: string): void => {
    repository.commit(tag);
    repository.git('tag', tag);
  };
  repository.write('site.shelter', site);
  repository.write('items.shelter', items);
  repository.write('one.shelter', arch('one'));
  repository.write('two.shelter', arch('two'));
  commit('start');
  repository.write('stock/pipes.shelter', items.slice(0, items.indexOf('/** Film')));
  repository.write(
    'items.shelter',
    `import "stock/pipes.shelter"\n${items.slice(items.indexOf('/** Film'))}`,
  );
  repository.write(
    'two.shelter',
    arch('two').replace('import "items', 'import "stock/pipes.shelter"\nimport "items'),
  );
  commit('move-item');
  repository.change('site.shelter', '6.20 per 20 ft', '7.10 per 20 ft');
  commit('prices');
  repository.change('site.shelter', 'currency USD', 'currency AUD');
  commit('currency');
  repository.remove('two.shelter');
  commit('delete');
  repository.write('one.shelter', arch('one').replace('footprint 12 ft by', 'footprint 12 ft wide'));
  commit('broken');
  repository.write('one.shelter', `${arch('one')}\nshelter }{`);
  commit('broken-elsewhere');
  repository.write('one.shelter', arch('one', 11));
  commit('mended');
  for (const name of ['site', 'items', 'one']) repository.remove(`${name}.shelter`);
  commit('all-gone');
});
afterAll(() => repository.dispose());

describe('a review', () => {
  it('takes an item that moved into another file for no design change', async () => {
    const made = await reviewed('move-item');
    expect([made.code, made.headline]).toEqual([0, expect.stringContaining('No design change.')]);
    for (const shelter of made.shelters)
      expect([shelter.findings, shelter.materials, shelter.parts]).toEqual([[], [], []]);
  });

  it('tells a price, and the cost that comes of it, and no finding', async () => {
    const made = await reviewed('prices');
    const one = named(made, 'one') as never as {
      cost: { before: { total: number }; after: { total: number } };
      findings: unknown[];
      parts: unknown[];
    };
    // Five bows of a whole pipe each.
    expect(one.cost.after.total - one.cost.before.total).toBeCloseTo(5 * 0.9, 9);
    expect([one.findings, one.parts, made.code]).toEqual([[], [], 0]);
  });

  it('tells a currency by its code, and does not call the same sum another', async () => {
    const { out, code } = await review('currency^', 'currency');
    expect(out).toContain('USD 419.50 so far → AUD 419.50 so far');
    expect(code).toBe(0);
  });

  it('tells a shelter that has gone, with exit code 0', async () => {
    const made = await reviewed('delete');
    expect(named(made, 'two')).toMatchObject({ change: 'removed', file: 'two.shelter' });
    expect(named(made, 'one')).toMatchObject({ change: 'unchanged' });
    expect(made.code).toBe(0);
  });

  it('says where a file is broken, with exit code 1, and is glad when it is mended', async () => {
    const made = await reviewed('broken');
    expect(made.code).toBe(1);
    const { out } = await review('broken^', 'broken');
    expect(out).toMatch(/After: one\.shelter:4: /);
    expect((await reviewed('mended')).code).toBe(0);
  });

  it('still works out what can be, where the fault lies outside the shelter', async () => {
    const { out, code } = await review('broken-elsewhere^', 'broken-elsewhere');
    expect(out).toContain('one.shelter:');
    expect([0, 1]).toContain(code);
  });

  it('can be made when nothing is left, and of nothing', async () => {
    const made = await reviewed('all-gone');
    expect(made.shelters.map(({ change }: { change: string }) => change)).toEqual(['removed']);
    const { out, code } = await review('all-gone', 'all-gone');
    expect([out, code]).toEqual([expect.stringContaining('No shelters.'), 0]);
  });

  it('is the same to the byte each time, in every form', async () => {
    for (const form of ['markdown', 'html']) {
      const [first, again] = [
        await review('start', 'mended', '--format', form),
        await review('start', 'mended', '--format', form),
      ];
      expect(again.out).toBe(first.out);
    }
  });
});
