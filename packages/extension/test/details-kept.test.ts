/** Answers on demand: asked for once a text, and those of an earlier text told apart. */
import { describe, expect, it } from 'vitest';
import type { DetailAnswer, DetailWanted } from '../src/details.ts';
import { type DetailMessage, DetailsKept } from '../src/preview/details-kept.ts';

const plan: DetailWanted = { kind: 'view', view: 'plan' };
const drawn = (svg: string): DetailAnswer => ({ kind: 'drawing', svg, description: '', captions: [] });

function kept() {
  const asked: DetailMessage[] = [];
  const details = new DetailsKept((message) => asked.push(message));
  return { details, asked };
}

describe('details of a sheet', () => {
  it('are asked for once a text, and only when they are looked at', () => {
    const { details, asked } = kept();
    expect(asked).toEqual([]);
    expect(details.now('house', plan)).toBe(undefined);
    expect(details.now('house', plan)).toBe(undefined);
    expect(asked.map(({ wanted }) => wanted)).toEqual([plan]);
    details.received(asked[0]!.id, drawn('one'));
    expect(details.now('house', plan)).toEqual(drawn('one'));
    expect(asked.length).toBe(1);
  });

  it('of an earlier text may stay in sight, but are not told as of now', () => {
    const { details, asked } = kept();
    details.now('house', plan);
    details.received(asked[0]!.id, drawn('one'));
    details.outdate();
    expect(details.of('house', plan)).toEqual(drawn('one'));
    expect(details.now('house', plan)).toBe(undefined);
    expect(asked.length).toBe(2);
    // An answer to the earlier question that comes late is still of the earlier text.
    details.received(asked[0]!.id, drawn('late'));
    expect(details.now('house', plan)).toBe(undefined);
    details.received(asked[1]!.id, drawn('two'));
    expect(details.now('house', plan)).toEqual(drawn('two'));
  });
});
