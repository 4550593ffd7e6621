/**
 * Every number says where it comes from: the stock of the catalogue, the named constants of loads and checks, and
 * the lists of sources that findings name.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { checks, sources } from '@tautline/checks';
import { builtInCatalogue } from '@tautline/language';
import { describe, expect, it } from 'vitest';

/** A document somebody can look up: a standard's number, a year of print, a table, or a kind of handbook. */
const document =
  /\b(?:EN|ISO|DIN|ASTM|ASME|ANSI|ASCE|AISC|AISI|NDS|NEC|IBC|FAO|ASABE|ASHRAE|API|TM|TR|UL|Paper)\b[ -/A-Z]*\d|\b1[89]\d\d\b|\b20[0-2]\d\b|handbook|tables?\b|Standard/;
/** What stands in place of one. */
const mark = /from memory|common practice|by definition|own choice|assumed|computed|derived/i;
/** Another item, which has its own. */
const another = /^as /;
const standsOn = (text: string): boolean => document.test(text) || mark.test(text);

describe('the catalogue', () => {
  const blocks = builtInCatalogue.flatMap(({ text }) =>
    [...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n([a-z]+ [a-z0-9-]+)(?: like [a-z0-9-]+)? \{/g)].map(
      (match) => ({ item: match[2]!, doc: match[1]!.replace(/\n \*/g, '') }),
    ),
  );

  it('has no block without a comment over it', () => {
    const heads = builtInCatalogue.flatMap(
      ({ text }) => text.match(/^[a-z]+ [a-z0-9-]+(?: like \S+)? \{/gm) ?? [],
    );
    expect(blocks.length).toBe(heads.length);
    expect(blocks.length).toBeGreaterThan(150);
  });

  it('names a document or says what stands in place of one, for every item', () => {
    const silent = blocks.filter(({ doc }) => {
      const source = /Source:\s*([\s\S]+)/.exec(doc)?.[1] ?? '';
      return !standsOn(source) && !another.test(source);
    });
    expect(silent.map(({ item }) => item)).toEqual([]);
  });
});

describe('the named numbers of loads and checks', () => {
  const folders = ['packages/loads/src', 'packages/checks/src'];
  const root = new URL('../../', import.meta.url);
  const files = folders.flatMap((folder) =>
    readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
      .map((name) => `${folder}/${name}`),
  );
  /** Lines `const name = number`, each with the comment over it or over the constant just before it. */
  const numbers = files.flatMap((file) => {
    const lines = readFileSync(new URL(file, root), 'utf8').split('\n');
    return lines.flatMap((line, at) => {
      const name = /^(?:export )?const (\w+)(?:: [^=]+)? = -?[\d.]/.exec(line)?.[1];
      if (name === undefined) return [];
      let top = at;
      while (top > 0 && /^(?:\/\*\*| \*|\/\/|(?:export )?const \w+ = -?[\d.(])/.test(lines[top - 1]!))
        top -= 1;
      return [{ place: `${file}: ${name}`, comment: lines.slice(top, at).join(' ') }];
    });
  });

  it('are found', () => expect(numbers.length).toBeGreaterThan(40));

  it('say on what they stand', () => {
    const silent = numbers.filter(({ comment }) => !standsOn(comment));
    const wanted = 'the comment over it names a document, or says from memory, common practice or own choice';
    expect(
      silent.map(({ place }) => place),
      wanted,
    ).toEqual([]);
  });
});

describe('sources', () => {
  it('say what they are, where to look and how sure they are', () => {
    for (const { id, title, where, standing } of Object.values(sources)) {
      expect(title.trim(), id).not.toBe('');
      expect(where.trim(), id).not.toBe('');
      expect(['published', 'from memory', 'common practice, no source', 'derived'], id).toContain(standing);
    }
  });

  it('that are called published name a document', () => {
    const loose = Object.values(sources).filter(
      ({ standing, title, where }) =>
        standing === 'published' &&
        !document.test(`${title} ${where}`) &&
        !/Handbook|Design|Manning|Building/.test(title),
    );
    expect(loose.map(({ id }) => id)).toEqual([]);
  });

  it('stand behind every check', () => {
    for (const { id, sources: named } of checks) expect(named.length, id).toBeGreaterThan(0);
  });
});
