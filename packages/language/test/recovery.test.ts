import fc from 'fast-check';
import { URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { createCoreServices } from '../src/services/core-module.ts';
import { problemsOf } from '../src/services/file-view.ts';
import { fileOf } from '../src/services/scope.ts';
import { readingOf } from '../src/spec/to-spec.ts';
import { houseText, houseUri, itemsText, itemsUri, load } from './house.ts';

const services = createCoreServices(['file:///gully']);
const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;

/** Builds one text next to the items, in services kept for the whole run. */
async function read(text: string) {
  const uri = URI.parse(houseUri);
  LangiumDocuments.deleteDocument(uri);
  const added = [LangiumDocuments.createDocument(uri, text)];
  const items = URI.parse(itemsUri);
  if (!LangiumDocuments.hasDocument(items)) added.push(LangiumDocuments.createDocument(items, itemsText));
  await DocumentBuilder.build(added, { validation: false });
  const document = added[0]!;
  const file = fileOf(document);
  return {
    problems: problemsOf(document, services),
    spec: file ? readingOf(file, houseUri).definitions : [],
  };
}

function inRange(text: string, problems: readonly { start: number; end: number; message: string }[]): void {
  for (const { start, end, message } of problems) {
    expect(start).toBeGreaterThanOrEqual(0);
    expect(end).toBeGreaterThanOrEqual(start);
    expect(end).toBeLessThanOrEqual(text.length);
    expect(message).not.toMatch(/undefined|NaN|token|Redundant|Expecting|LINE_WORD|\bEOF\b/);
  }
}

describe('half-typed texts', () => {
  it('reads every beginning of a file, with problems inside it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(houseText.length), async (length) => {
        const text = houseText.slice(0, length);
        inRange(text, (await read(text)).problems);
      }),
      { numRuns: 150 },
    );
  });

  it('reads a file with any stretch taken out or doubled, and anything put in', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(houseText.length),
        fc.nat(30),
        fc.oneof(
          fc.string({ maxLength: 12 }),
          fc.constantFrom(
            '{',
            '}',
            '"',
            '/*',
            '*/',
            '//',
            ';',
            '\n',
            '(',
            '-',
            '1/0 m',
            '9e999 m',
            '1:0',
            '==',
            'let x',
            '3 4 5',
          ),
        ),
        async (from, length, put) => {
          const text = houseText.slice(0, from) + put + houseText.slice(from + length);
          inRange(text, (await read(text)).problems);
        },
      ),
      { numRuns: 250 },
    );
  });

  it('keeps a half-typed line from disturbing the others', async () => {
    const lines = houseText.split('\n');
    const whole =
      (await load(houseText)).worldOf(houseUri)?.definitions.get('plug-house')?.children.length ?? 0;
    for (const row of [12, 17, 18, 19]) {
      for (const half of [
        'cov',
        'cover',
        'cover roof with',
        'orientation 20 deg +',
        'foo "bar',
        'gutter (',
        'crop a hung 3 kg/',
        'x = = y',
      ]) {
        const text = [...lines.slice(0, row), `  ${half}`, ...lines.slice(row)].join('\n');
        const { problems, spec } = await read(text);
        const start = lines.slice(0, row).join('\n').length + 1;
        const own = problems.filter((one) => one.start >= start && one.start <= start + half.length + 3);
        expect(own.length, half).toBeGreaterThan(0);
        expect(problems.length - own.length, `${row} ${half} ${JSON.stringify(problems)}`).toBe(0);
        const shelter = spec.find(({ name }) => name === 'plug-house');
        expect(shelter?.children.length, half).toBeGreaterThanOrEqual(whole);
      }
    }
  });
});
