/** What stands as it stood before an edit is not read again, and comes to what a fresh reading comes to. */
import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { type LangiumDocument, URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue } from '../src/files/catalogue.ts';
import { createCoreServices } from '../src/services/core-module.ts';
import { definitionsOf } from '../src/services/file-view.ts';
import { fileOf } from '../src/services/scope.ts';
import { readingOf } from '../src/spec/to-spec.ts';

const folder = new URL('../../../examples/', import.meta.url);
const example = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const names = readdirSync(folder).filter((name) => name.endsWith('.shelter'));
const uri = URI.parse('file:///gully/reread.shelter');
const measures = URI.parse('file:///gully/measures.shelter');

/** A file with what it imports, typed in as in the editor. */
async function typing(text: string) {
  const services = createCoreServices(['file:///gully']);
  const { LangiumDocuments, DocumentBuilder, FileSystemProvider } = services.shared.workspace;
  const texts = new Map<string, string>();
  Object.assign(FileSystemProvider, { readFile: async (at: URI) => texts.get(at.toString()) ?? '' });
  const add = (at: URI, said: string): LangiumDocument => LangiumDocuments.createDocument(at, said);
  const document = add(uri, text);
  const other = add(measures, 'let bay = 4 ft\n');
  await DocumentBuilder.build([
    document,
    other,
    ...builtInCatalogue.map((one) => add(URI.parse(one.uri), one.text)),
  ]);
  const change = async (one: LangiumDocument, said: string): Promise<void> => {
    texts.set(one.uri.toString(), said);
    await DocumentBuilder.update([one.uri], []);
  };
  const fresh = () => readingOf(fileOf(document)!, uri.toString()).definitions;
  return { document, other, change, fresh };
}

const bits = [
  '3',
  '.5 m',
  ' ',
  '\n',
  '}',
  '{',
  '"',
  '/** a note */\n',
  '// a note\n',
  'bay',
  'let bay = 2 m\n',
  'prices { }\n',
  'spaced',
];

describe('a text that is typed in', () => {
  it('says what a fresh reading of it says, whatever was typed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...names),
        fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(12), fc.constantFrom(...bits)), {
          minLength: 1,
          maxLength: 8,
        }),
        async (name, edits) => {
          let text = `import "measures.shelter"\n${example(name).replace(/^import .*\n/gm, '')}`;
          const { document, change, fresh } = await typing(text);
          expect(definitionsOf(document)).toEqual(fresh());
          for (const [where, gone, put] of edits) {
            const at = Math.floor(where * text.length);
            text = text.slice(0, at) + put + text.slice(at + gone);
            await change(document, text);
            expect(definitionsOf(document), text).toEqual(fresh());
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  const house = (spaced: string): string => `import "measures.shelter"
let half = bay / 2
/** Of two. */
site terrace { gust 42 m/s }
shelter one on terrace { footprint 4 m by 9 m; bows spaced ${spaced} of pvc40-25 { shape elastic; rise 2 m } }
shelter two on terrace { footprint 4 m by 9 m; bows spaced 1 m of pvc40-25 { shape elastic; rise 2 m } }
`;
  const objects = async (from: string, to: string) => {
    const { document, change, fresh } = await typing(from);
    const before = definitionsOf(document);
    await change(document, to);
    const after = definitionsOf(document);
    expect(after).toEqual(fresh());
    return { before, same: after.map((one, at) => one === before[at]) };
  };

  it('keeps what was read of blocks that nobody touched', async () => {
    expect((await objects(house('1 m'), house('1.1 m'))).same).toEqual([true, false, true]);
    const [from, moved] = [house('1 m'), house('1 m').replace('let half', '// words\n\nlet half')];
    expect((await objects(from, moved)).same).toEqual([true, true, true]);
  });

  it('reads again what stands elsewhere, under another note, or says a value by its name', async () => {
    const shifted = house('1 m').replace('/** Of two. */', 'let more = 1 m\n/** Of two. */');
    expect((await objects(house('1 m'), shifted)).same).toEqual([false, false, false]);
    const noted = house('1 m').replace('Of two', 'Of three');
    expect((await objects(house('1 m'), noted)).same).toEqual([false, true, true]);
    const named = house('half');
    const { before } = await objects(named, named.replace('bay / 2', 'bay / 3'));
    expect(JSON.stringify(before)).toContain('"si":0.6096');
  });

  it('takes the values of a file it imports as they are now', async () => {
    const { document, other, change, fresh } = await typing(house('half'));
    const before = definitionsOf(document);
    await change(other, 'let bay = 8 ft\n');
    expect(definitionsOf(document)).toEqual(fresh());
    expect(definitionsOf(document)).not.toEqual(before);
  });
});
