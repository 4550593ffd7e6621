/** The generated pages are those that the sources make, and every example of the vocabulary can be read. */
import { readFileSync } from 'node:fs';
import { definitionKinds, type Entry } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { pages } from '../scripts/reference/pages.ts';
import { loadWorkspace } from '../src/index.ts';

const root = new URL('../../../', import.meta.url);

describe('generated pages', () => {
  it('are what npm run generate makes', async () => {
    for (const [path, text] of Object.entries(await pages()))
      expect(readFileSync(new URL(path, root), 'utf8'), path).toBe(text);
  });
});

/** Names that examples refer to. */
const prelude = `site gully-terrace {
  gust 30 m/s
}
shelter bed-arch on gully-terrace {
  footprint 4 m by 8 m
}
shelter plug-house on gully-terrace {
  footprint 4 m by 8 m
}
`;

/** A line of an example without the block behind it. */
const head = (example: string): string => example.replace(/\s*\{[\s\S]*$/, '');

interface Case {
  readonly path: string;
  readonly text: string;
}

/** Every entry with a file in which its example stands in its block. */
function cases(): Case[] {
  const found: Case[] = [];
  let count = 0;
  const walk = (entry: Entry, above: readonly Entry[]): void => {
    const [top, ...between] = above;
    if (top !== undefined) {
      const opened = between.map((one) => `${head(one.example)} {`);
      const own = head(top.example).split(' ');
      const kind = definitionKinds.find(({ word }) => word === top.word);
      if (kind?.named === true) own[1] = `one-${count++}`;
      const text = [`${own.join(' ')} {`, ...opened, entry.example, ...'}'.repeat(above.length)].join('\n');
      found.push({ path: [...above, entry].map(({ word }) => word).join(' / '), text });
    }
    for (const child of entry.facts ?? []) walk(child, [...above, entry]);
  };
  for (const kind of definitionKinds) {
    const named = kind.named ? kind.example.replace(/^(\S+) \S+/, `$1 whole-${count++}`) : kind.example;
    found.push({ path: kind.word, text: named });
    walk(kind, []);
  }
  return found;
}

/** An example says one fact: what else its block needs, or what its line said already, is not asked. */
const beside = new Set(['missing-fact', 'duplicate-fact']);

describe('examples of the vocabulary', () => {
  const all = cases();

  it('are many', () => {
    expect(all.length).toBeGreaterThan(250);
  });

  it('can be read where they belong', async () => {
    let text = prelude;
    const starts = all.map((one) => {
      const start = text.length;
      text += `${one.text}\n`;
      return start;
    });
    const checks = new Set(['bow-deflection']);
    const { problems } = await loadWorkspace([{ uri: 'file:///all.shelter', text }], () => undefined, {
      checks,
    });
    const wrong = problems
      .filter(({ id }) => !beside.has(id))
      .map(({ start, message }) => {
        const one = all[starts.findLastIndex((from) => from <= start)];
        return `${one?.path}: ${message}\n${one?.text}`;
      });
    expect(wrong).toEqual([]);
  });
});
