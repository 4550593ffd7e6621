/** Laying out is idempotent and never changes what a spec says, over all examples and over spoilt layouts of them. */
import { formatText, loadWorkspace } from '@tautline/language';
import { type SpecDefinition, sameDefinition } from '@tautline/shelter';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { names, textOf } from './fixture.ts';

/** The definitions of the files by name. */
async function said(texts: readonly { name: string; text: string }[]): Promise<Map<string, SpecDefinition>> {
  const files = texts.map(({ name, text }) => ({ uri: `file:///${name}`, text }));
  // What the names stand for does not matter to the layout: the catalogue is left out, which is quicker.
  const { worldOf } = await loadWorkspace(files, () => undefined, { catalogue: [] });
  const found = new Map<string, SpecDefinition>();
  for (const { uri } of files)
    for (const [name, definition] of worldOf(uri)?.definitions ?? []) {
      if (String(definition.origin).includes(uri)) found.set(`${uri} ${name}`, definition);
    }
  return found;
}

function expectSame(before: Map<string, SpecDefinition>, after: Map<string, SpecDefinition>): void {
  expect(before.size).toBeGreaterThan(names.length - 5);
  expect([...after.keys()]).toEqual([...before.keys()]);
  for (const [name, definition] of before)
    expect(sameDefinition(definition, after.get(name)!), name).toBe(true);
}

const whole = names.map((name) => ({ name, text: textOf(name) }));

/** The text with its layout spoilt: other indents and gaps, blocks on one line, `;` at line ends. */
function spoilt(text: string, choose: (most: number) => number): string {
  return text
    .split('\n')
    .map((line) => {
      if (/^\s*(\/[/*]|\*)/.test(line) || line.includes('"')) return line;
      const code = line.trim();
      if (code === '') return choose(2) === 0 ? '' : '\n';
      const [fact = '', remark] = code.split(/\s+(?=\/\/)/);
      const spaced = fact.replaceAll(/ (?=[{}])|(?<=\{) /g, () => ' '.repeat(1 + choose(3)));
      const closed = /[{}]$/.test(fact) || choose(3) > 0 ? spaced : `${spaced};`;
      return `${' '.repeat(choose(9))}${closed}${remark === undefined ? '' : `   ${remark}`}${' '.repeat(choose(3))}`;
    })
    .join('\n');
}

describe('laying out', () => {
  it('leaves every example as it is: they are laid out', () => {
    for (const { name, text } of whole) expect(formatText(text), name).toBe(text);
  });

  it('of a spoilt layout says the same, keeps every comment, and is done in one go', async () => {
    const before = await said(whole);
    await fc.assert(
      fc.asyncProperty(fc.infiniteStream(fc.nat(1000)), async (stream) => {
        const choose = (most: number): number => (stream.next().value ?? 0) % most;
        const mixed = whole.map(({ name, text }) => ({ name, text: spoilt(text, choose) }));
        expectSame(before, await said(mixed));
        const laid = mixed.map(({ name, text }) => ({ name, text: formatText(text) }));
        expectSame(before, await said(laid));
        for (const [index, { text }] of laid.entries()) {
          expect(formatText(text)).toBe(text);
          const comments = (of: string): readonly string[] =>
            (of.match(/\/\/[^\n]*|\/\*[\s\S]*?\*\//g) ?? []).map((one) => one.trim());
          expect(comments(text)).toEqual(comments(whole[index]!.text));
        }
      }),
      { numRuns: 3 },
    );
  });
});
