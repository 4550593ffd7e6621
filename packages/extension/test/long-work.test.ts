/** Exploring and the review against the last commit, asked as the editor asks them. */

import type {
  AssumedAnswer,
  ChangesAnswer,
  CommittedAnswer,
  Explored,
  PreviewAnswer,
  VariantAnswer,
} from '@tautline/language/protocol';
import { createInPlaceWork } from '@tautline/language/server';
import { afterEach, describe, expect, it } from 'vitest';
import { applied, type Editor, startEditor } from '../../language/test/editor.ts';
import { jobs } from '../src/server/jobs.ts';
import { registerOwnRequests } from '../src/server/own-requests.ts';
import { sheets } from '../src/server/sheets.ts';

const site = 'site terrace { gust 30 m/s; soil loam; rain 60 mm/h }\n';
const house = `import "site.shelter"
/** A bed of plugs. */
shelter plug-house on terrace {
  footprint 3.6 m by 6 m
  bows spaced 1.2 m of pvc40-25 { shape elastic; rise 1.6 m; foot stub of rebar-12 { length 1.2 m; deep 0.6 m } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
  require headroom >= 1.2 m at 0.6 m from side
  vary bows spaced from 0.8 m to 1.2 m by 0.2 m
}
`;
const uri = 'file:///gully/house.shelter';
const siteUri = 'file:///gully/site.shelter';

let editor: Editor;
afterEach(() => editor.close());

async function start(text: string, siteText = site): Promise<void> {
  editor = await startEditor(
    { longWork: createInPlaceWork(jobs), sheets },
    'file:///gully',
    registerOwnRequests,
  );
  await editor.open(siteUri, siteText);
  await editor.open(uri, text);
  await editor.evaluated();
}

describe('exploring', () => {
  const explore = (more: object = {}) =>
    editor.ask<Explored | { why: string }>('tautline/explore', { uri, ...more });

  it('works out every variant, with a page, and tells how far it is', async () => {
    await start(house);
    const progress: { message?: string }[] = [];
    editor.client.onNotification('$/progress', ({ value }: { value: { message?: string } }) =>
      progress.push(value),
    );
    const found = (await explore({ workDoneToken: 7 })) as Explored;
    expect(found).toMatchObject({ shelter: 'plug-house', axes: ['bows spaced'], of: 3, version: 1 });
    expect(found.variants.map(({ number, values }) => [number, ...values])).toEqual([
      [1, '0.8 m'],
      [2, '1 m'],
      [3, '1.2 m'],
    ]);
    expect(found.variants.every(({ headroom }) => (headroom ?? 0) > 0.5)).toBe(true);
    expect(found.variants.every(({ best, holds }) => holds || !best)).toBe(true);
    expect(found.markdown).toMatch(/^# Variants of plug-house\n/);
    expect(found.markdown.match(/^\|/gm)?.length).toBe(5);
    expect(found.markdown).toMatch(/Held fixed:[\s\S]*gust 30 m\/s[\s\S]*licensed engineer decide/);
    expect(progress.flatMap(({ message }) => message ?? [])).toEqual([
      'variant 1 of 3',
      'variant 2 of 3',
      'variant 3 of 3',
    ]);
  });

  it('writes a variant into the text, and says what cannot be written', async () => {
    await start(house);
    const ask = (number: number) =>
      editor.ask<VariantAnswer>('tautline/variant', { uri, shelter: 'plug-house', number });
    const { version, edits } = (await ask(2)) as AssumedAnswer;
    expect(version).toBe(1);
    expect(applied(house, edits as Parameters<typeof applied>[1])).toBe(
      house.replace('spaced 1.2 m of', 'spaced 1 m of'),
    );
    expect(await ask(4)).toMatchObject({ why: expect.stringContaining('no variant 4') });
  });

  it('says whether what it found belongs to a text, whichever variant stands there', async () => {
    const marks: (string | undefined)[] = [];
    await start(house);
    for (const text of [
      house,
      `// Only a remark.\n${house}`,
      house.replace('spaced 1.2 m of', 'spaced 1 m of'),
      house.replace('rise 1.6 m', 'rise 1.7 m'),
    ]) {
      await editor.change(uri, text);
      const found = (await explore()) as Explored;
      const { shelters } = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
      expect(shelters[0]?.varied, 'the sheet knows the same mark').toBe(found.varied);
      marks.push(found.varied);
    }
    expect(marks[1]).toBe(marks[0]);
    expect(marks[2]).toBe(marks[0]);
    expect(marks[3]).not.toBe(marks[0]);
  });

  it('says what to write where nothing varies', async () => {
    await start(house.replace(/ {2}vary.*\n/, ''));
    expect(await explore()).toMatchObject({ why: expect.stringContaining('says nothing to vary') });
  });
});

describe('what changed since the last commit', () => {
  /** Asks with these texts as the last commit. */
  async function changes(last: Readonly<Record<string, string>>, why?: string): Promise<ChangesAnswer> {
    const asked: string[] = [];
    editor.client.onRequest('tautline/committed', ({ uri: of }: { uri: string }): CommittedAnswer => {
      asked.push(of);
      if (why !== undefined) return { why };
      const text = last[of];
      return { commit: 'the last commit, 1234abcd', ...(text === undefined ? {} : { text }) };
    });
    const answer = await editor.ask<ChangesAnswer>('tautline/changes', { uri });
    expect(asked[0]).toBe(uri);
    return answer;
  }
  const pageOf = (answer: ChangesAnswer): string =>
    'page' in answer ? answer.page : `no page: ${answer.why}`;
  const words = (page: string): string =>
    page.replace(/<(style|svg)[\s\S]*?<\/\1>/g, '').replace(/<[^>]*>/g, ' ');

  it('is told as a page with the facts, the parts and the drawings before and after', async () => {
    await start(house);
    const answer = await changes({ [uri]: house.replace('1.2 m of', '0.9 m of'), [siteUri]: site });
    const page = pageOf(answer);
    expect(answer).toMatchObject({ title: 'house.shelter: since the last commit' });
    expect(words(page)).toMatch(/plug-house[\s\S]*1 fact changed/);
    expect(words(page)).toMatch(/bows › spaced[\s\S]*0\.9 m[\s\S]*1\.2 m/);
    expect(words(page)).toMatch(/the last commit, 1234abcd/);
    expect(page.match(/<svg/g)?.length).toBeGreaterThan(3);
    expect(page).not.toMatch(/<script|NaN|undefined/);
    expect(words(page)).toMatch(/licensed engineer decide/);
  });

  it('follows imports: another site is another shelter', async () => {
    await start(house, site.replace('30 m/s', '40 m/s'));
    const page = words(pageOf(await changes({ [uri]: house, [siteUri]: site })));
    expect(page).toMatch(/gust[\s\S]*30 m\/s[\s\S]*40 m\/s/);
  });

  it('is nothing where only the layout differs, and everything in a new file', async () => {
    await start(house);
    const same = words(pageOf(await changes({ [uri]: `// as it was\n${house}`, [siteUri]: site })));
    expect(same).toMatch(/Unchanged[\s\S]*plug-house/);
    const all = words(pageOf(await changes({ [siteUri]: site })));
    expect(all).toMatch(/Of 1 shelter: 1 added/);
  });

  it('says why when there is no last commit', async () => {
    await start(house);
    expect(await changes({}, 'Nothing was committed yet in this repository.')).toEqual({
      why: 'Nothing was committed yet in this repository.',
    });
  });
});
