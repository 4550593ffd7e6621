/** What the drawing sheet shows while answers about one shelter or another come in. */
import type { PreviewAnswer, PreviewShelter } from '@tautline/language/protocol';
import { describe, expect, it } from 'vitest';
import { LastGood } from '../src/preview/last-good.ts';

const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 1 } };
const shelter = (name: string, title = ''): PreviewShelter => ({
  name,
  title,
  range,
  drawings: [{ view: 'section', svg: '<svg/>', description: name }],
  parts: [],
  findings: [],
  materials: [],
  facts: [],
  assumed: [],
  notChecked: [],
});
const answer = (one: string, names: readonly string[], more: Partial<PreviewAnswer> = {}): PreviewAnswer => ({
  uri: 'file:///gully/a.shelter',
  version: 1,
  one,
  names: names.map((name) => ({ name, range })),
  shelters: [shelter(one)],
  ...more,
});

describe('the sheet that is on show', () => {
  it('is the last one until there is an answer about the one chosen, and says so', () => {
    const good = new LastGood();
    expect(good.nothing(undefined)).toMatch(/^Reading/);
    good.answered(answer('plum', ['plum', 'ginger_house']), 'a.shelter');
    expect(good.stale(undefined)).toBe(undefined);
    expect([good.shown?.name, good.chosen('ginger_house'), good.stale('ginger_house')]).toEqual([
      'plum',
      'ginger_house',
      'Drawing ginger house.',
    ]);
    good.answered(answer('ginger_house', ['plum', 'ginger_house']), 'a.shelter');
    expect([good.shown?.name, good.stale('ginger_house')]).toEqual(['ginger_house', undefined]);
    // There before, but perhaps not as the text is now.
    expect([good.shown?.name, good.stale('plum')]).toEqual(['ginger_house', 'Drawing plum.']);
  });

  it('is the first where the chosen one has another name now', () => {
    const good = new LastGood();
    good.answered(answer('plum', ['plum', 'ginger']), 'a.shelter');
    good.answered(answer('pear', ['pear', 'ginger']), 'a.shelter');
    expect([good.shown?.name, good.chosen('plum'), good.stale('plum')]).toEqual(['pear', 'pear', undefined]);
    expect(good.names.map(({ name }) => name)).toEqual(['pear', 'ginger']);
  });

  it('stays as it was last drawn well while the text is broken, and can still be chosen', () => {
    const good = new LastGood();
    good.answered(answer('plum', ['plum', 'ginger']), 'a.shelter');
    good.answered(answer('ginger', ['plum', 'ginger']), 'a.shelter');
    good.answered(answer('ginger', ['plum'], { shelters: [], broken: 'A text is not closed.' }), 'a.shelter');
    expect([good.shown?.name, good.stale('ginger')]).toEqual([
      'ginger',
      'A text is not closed. This is the last good drawing.',
    ]);
    expect(good.names.map(({ name }) => name)).toEqual(['plum', 'ginger']);
    good.answered(answer('plum', ['plum'], { shelters: [], broken: 'A text is not closed.' }), 'a.shelter');
    expect(good.shown?.name).toBe('plum');
  });

  it('is replaced where the broken text still gives a drawing, and not where it gives none', () => {
    const good = new LastGood();
    good.answered(answer('plum', ['plum']), 'a.shelter');
    const part = { ...shelter('plum', 'in part'), drawings: [] };
    good.answered(answer('plum', ['plum'], { shelters: [part], broken: 'No.' }), 'a.shelter');
    expect(good.shown?.title).toBe('');
    good.answered(
      answer('plum', ['plum'], { shelters: [shelter('plum', 'whole')], broken: 'No.' }),
      'a.shelter',
    );
    expect(good.shown?.title).toBe('whole');
  });

  it('is nothing, with a reason, where it was never drawn or is gone', () => {
    const good = new LastGood();
    good.answered(
      answer('plum', ['plum', 'ginger'], { shelters: [], broken: 'The footprint is missing.' }),
      'a.shelter',
    );
    expect([good.shown, good.nothing(undefined), good.chosen(undefined)]).toEqual([
      undefined,
      'The footprint is missing.',
      'plum',
    ]);
    good.answered(answer('ginger', ['plum', 'ginger']), 'a.shelter');
    good.wait('The server is away.');
    expect(good.stale('ginger')).toBe('The server is away.');
    const { one: _none, ...empty } = answer('', [], { shelters: [] });
    good.answered(empty, 'a.shelter');
    expect([good.shown, good.nothing('ginger')]).toEqual([undefined, 'a.shelter describes no shelter yet.']);
  });
});
