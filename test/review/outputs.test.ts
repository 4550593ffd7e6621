/** What a review looks like to a reader, and where it can be asked for. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day, ScriptedRepository, tautline } from './repository.ts';

const text = `site terrace { gust 26 m/s once per 50 yr; exposure sheltered; elevation 480 m; rain 110 mm/h; soil loam; basis asce7-asd }
shelter low-row on terrace {
  footprint 6 ft by 24 ft
  worked from outside
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 3 ft; foot stub of rebar-16 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { tension 150 N/m }
}
`;

let repository: ScriptedRepository;
const review = (...words: string[]) =>
  tautline('review', ...words, '--repository', repository.folder, '--on', day);

beforeAll(() => {
  repository = new ScriptedRepository();
  repository.write('row.shelter', text);
  repository.commit('start');
  repository.change('row.shelter', 'rise 3 ft', 'rise 1.5 ft');
  repository.change('row.shelter', 'worked from', 'note "<b>@all | see #1</b>"\n  worked from');
  repository.commit('lower');
}, 60_000);
afterAll(() => repository.dispose());

describe('the comment', () => {
  it('begins with the mark that the next run looks for, is the same each time and names the caution', async () => {
    const first = await review('HEAD~1', 'HEAD');
    const second = await review('HEAD~1', 'HEAD');
    expect(first.out).toBe(second.out);
    expect(first.out.startsWith('<!-- tautline review -->\n')).toBe(true);
    expect(first.out).toContain('A screening aid');
    expect(first.out).toContain('bows › rise: 3 ft → 1 ft 6 in');
    expect(first.out).toMatch(/<details( open)?><summary>/);
  });

  it('lets nothing a spec says become markup, a mention or a link', async () => {
    const { out } = await review('HEAD~1', 'HEAD');
    expect(out).not.toContain('<b>@');
    expect(out).not.toContain('@all');
    expect(out).not.toContain('#1<');
    expect(out).toContain('&lt;b&gt;&#64;all &#124; see &#35;1&lt;/b&gt;');
  });

  it('shows other units when asked', async () => {
    const { out } = await review('HEAD~1', 'HEAD', '--units', 'us');
    expect(out).toContain('bows › rise: 3 ft → 1 ft 6 in');
  });
});

describe('the page', () => {
  it('draws the shelter before and after with the changed part marked', async () => {
    const { out } = await review('HEAD~1', 'HEAD', '--format', 'html');
    expect(out.match(/<figcaption>section, (before|after)<\/figcaption><svg/g)).toHaveLength(2);
    // The pen that marks a part, in both drawings of every view.
    expect(out.match(/stroke="#0072b2"/g)?.length ?? 0).toBeGreaterThanOrEqual(4);
    expect(out).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
  });
});

describe('where a review can be asked for', () => {
  it('compares commits of a bare repository, and says that it has no working tree', async () => {
    const bare = `${repository.folder}/.bare`;
    repository.git('clone', '-q', '--bare', repository.folder, bare);
    const asked = await tautline('review', 'HEAD~1', 'HEAD', '--repository', bare, '--on', day);
    expect(asked.err).toBe('');
    expect(asked.out).toBe((await review('HEAD~1', 'HEAD')).out);
    const tree = await tautline('review', 'HEAD', '--repository', bare);
    expect(tree.code).toBe(2);
    expect(tree.err).toContain('no working tree');
  });

  it('compares from where two branches parted', async () => {
    repository.git('checkout', '-q', '-b', 'side', 'HEAD~1');
    repository.change('row.shelter', 'by 24 ft', 'by 32 ft');
    repository.commit('longer');
    const { out } = await review('main...side', '--format', 'json');
    repository.git('checkout', '-q', 'main');
    expect(JSON.parse(out).shelters[0].facts.design.map((fact: { path: string[] }) => fact.path)).toEqual([
      ['footprint'],
    ]);
  });

  it('compares two folders', async () => {
    const folders = new ScriptedRepository();
    folders.write('old/row.shelter', text);
    folders.write('new/below/row.shelter', text.replace('by 24 ft', 'by 20 ft'));
    const { out } = await tautline(
      'review',
      `${folders.folder}/old`,
      `${folders.folder}/new`,
      '--format',
      'json',
      '--on',
      day,
    );
    folders.dispose();
    expect(JSON.parse(out).shelters).toMatchObject([
      { change: 'changed', movedFrom: 'row.shelter', file: 'below/row.shelter' },
    ]);
  });

  it.each([
    [['nowhere'], "no revision 'nowhere'"],
    [['--', '--output=x'], "'--output=x' is no revision"],
    [[], 'which revision'],
  ])('says why %j cannot be compared, with exit code 2', async (words, told) => {
    const { code, err } = await tautline('review', '--repository', repository.folder, ...words);
    expect(code).toBe(2);
    expect(err).toContain(told);
  });
});

describe('acceptances', () => {
  it('that no longer apply are told, with exit code 1', async () => {
    const folders = new ScriptedRepository();
    const accepted = text.replace('  cover', '  accept hot-contact because "changed every year"\n  cover');
    folders.write('old/row.shelter', accepted);
    folders.write('new/row.shelter', accepted.replace('shape elastic', 'wrapped; shape elastic'));
    const { code, out } = await tautline(
      'review',
      `${folders.folder}/old`,
      `${folders.folder}/new`,
      '--format',
      'json',
      '--on',
      day,
    );
    folders.dispose();
    const [shelter] = JSON.parse(out).shelters;
    expect(shelter.facts.design).toMatchObject([{ path: ['bows', 'wrapped'], change: 'added' }]);
    expect(shelter.acceptances).toMatchObject([{ change: 'went stale', check: 'hot-contact' }]);
    expect(code).toBe(1);
  });
});

describe('ranges and variants', () => {
  it('are reviewed by what they say, and by what they vary', async () => {
    const folders = new ScriptedRepository();
    const more = `${text}variant wide-row of low-row { bows spaced 2 ft }\nrange rows { stand 3 of low-row; gap 2 ft }\n`;
    folders.write('old/row.shelter', more);
    folders.write(
      'new/row.shelter',
      more.replace('gap 2 ft', 'gap 4 ft').replace('rise 3 ft', 'rise 2.5 ft'),
    );
    const { out } = await tautline(
      'review',
      `${folders.folder}/old`,
      `${folders.folder}/new`,
      '--format',
      'json',
      '--on',
      day,
    );
    folders.dispose();
    const told = Object.fromEntries(
      JSON.parse(out).shelters.map(
        (one: { name: string; facts: { design: { path: string[] }[] } }) =>
          [one.name, one.facts.design.map(({ path }) => path.join(' '))] as const,
      ),
    );
    expect(told).toEqual({ 'low-row': ['bows rise'], 'wide-row': ['bows rise'], rows: ['gap'] });
  });
});

describe('exit codes', () => {
  it('are 1 when a shelter can no longer be worked out, and the review says why', async () => {
    repository.change('row.shelter', 'of pvc40-25', 'of pvc40-99');
    const { code, out } = await review('HEAD');
    repository.git('checkout', '-q', 'row.shelter');
    expect(code).toBe(1);
    expect(out).toContain('pvc40-99');
    expect(out).not.toContain('went');
  });

  it('are 0 the other way round', async () => {
    expect((await review('HEAD', 'HEAD')).code).toBe(0);
  });
});
