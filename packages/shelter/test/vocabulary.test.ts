import { describe, expect, test } from 'vitest';
import type { Entry, Piece } from '../src/index.ts';
import { compileSentence, definitionKinds, entryFor, piecesOf } from '../src/index.ts';

/** Words that a number may be followed by as its unit: a literal like these could not be told from a unit. */
const unitWords = new Set([
  'in',
  'm',
  'ft',
  'mm',
  'cm',
  's',
  'h',
  'kg',
  'g',
  'N',
  'deg',
  'yr',
  'd',
  'a',
  'min',
]);
const kinds = new Set(
  'length thickness film-thickness area volume angle slope mass force moment stress pressure line-load speed rain-rate time temperature mass-per-area mass-per-length density curvature stiffness rotational-stiffness section-modulus second-moment ratio count percent flow money'.split(
    ' ',
  ),
);

function walk(entry: Entry, path: string, visit: (entry: Entry, path: string) => void): void {
  visit(entry, path);
  for (const child of entry.facts ?? []) walk(child, `${path} ${child.word}`, visit);
}

function everyEntry(visit: (entry: Entry, path: string) => void): void {
  for (const kind of definitionKinds) walk(kind, kind.word, visit);
}

function flat(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.flatMap((piece) => (piece.type === 'optional' ? flat(piece.pieces) : [piece]));
}

describe('sentences', () => {
  test('compile to literals, slots and optional groups', () => {
    expect(compileSentence('{width: length} by {length: length}')).toEqual([
      { type: 'slot', slot: 'width', takes: { type: 'quantity', kind: 'length' } },
      { type: 'literal', word: 'by' },
      { type: 'slot', slot: 'length', takes: { type: 'quantity', kind: 'length' } },
    ]);
    expect(compileSentence('{item: item pipe|rod} [at {at: length} [from side]]')).toEqual([
      { type: 'slot', slot: 'item', takes: { type: 'item', kinds: ['pipe', 'rod'] } },
      {
        type: 'optional',
        pieces: [
          { type: 'literal', word: 'at' },
          { type: 'slot', slot: 'at', takes: { type: 'quantity', kind: 'length' } },
          {
            type: 'optional',
            pieces: [
              { type: 'literal', word: 'from' },
              { type: 'literal', word: 'side' },
            ],
          },
        ],
      },
    ]);
    expect(compileSentence('')).toEqual([]);
  });

  test.each(['[at {a: length}', 'at]', '{a: furlong here}', '{a: definition pipe}'])(
    'refuse %s',
    (sentence) => {
      expect(() => compileSentence(sentence)).toThrow();
    },
  );
});

describe('the vocabulary', () => {
  test('compiles, and explains every entry with a line that uses it', () => {
    everyEntry((entry, path) => {
      expect(() => piecesOf(entry), path).not.toThrow();
      expect(entry.doc.length, path).toBeGreaterThan(5);
      expect(entry.example.startsWith(entry.word), path).toBe(true);
    });
  });

  test('uses only known kinds of quantity, words of the language, and no literal that reads as a unit', () => {
    everyEntry((entry, path) => {
      expect(entry.word, path).toMatch(/^[a-z]+(-[a-z]+)*$/);
      for (const piece of flat(piecesOf(entry))) {
        if (piece.type === 'literal') expect(unitWords.has(piece.word), `${path}: ${piece.word}`).toBe(false);
        if (piece.type === 'slot' && piece.takes.type === 'quantity') {
          expect(kinds.has(piece.takes.kind), `${path}: ${piece.takes.kind}`).toBe(true);
        }
      }
    });
  });

  test('has no two facts with one word in a block, and no two slots with one name in a sentence', () => {
    everyEntry((entry, path) => {
      const words = (entry.facts ?? []).map((child) => child.word);
      expect(new Set(words).size, path).toBe(words.length);
      const slots = flat(piecesOf(entry)).flatMap((piece) => (piece.type === 'slot' ? [piece.slot] : []));
      expect(new Set(slots).size, path).toBe(slots.length);
    });
  });

  test('names the only value of a fact value, and the only item item', () => {
    for (const [path, slot] of [
      [['shelter', 'bows', 'rise'], 'value'],
      [['shelter', 'bows', 'of'], 'item'],
      [['shelter', 'cover', 'with'], 'item'],
      [['pipe', 'outside'], 'value'],
    ] as const) {
      const slots = flat(piecesOf(entryFor(path)!)).flatMap((piece) =>
        piece.type === 'slot' ? [piece.slot] : [],
      );
      expect(slots).toEqual([slot]);
    }
  });

  test('finds entries by their words', () => {
    expect(entryFor(['shelter', 'bows', 'foot', 'lean'])?.doc).toContain('90 deg is upright');
    expect(entryFor(['shelter', 'bows', 'nonsense'])).toBeUndefined();
    expect(entryFor(['nonsense'])).toBeUndefined();
    expect(entryFor([])).toBeUndefined();
  });
});
