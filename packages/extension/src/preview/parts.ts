import type { PlainRange, PreviewPart, PreviewShelter } from '@tautline/language/protocol';

/** The part a mark in a drawing belongs to: `bows/foot/3` falls back to `bows/foot`, then to `bows`. */
export function partOf(shelter: PreviewShelter, id: string): PreviewPart | undefined {
  for (let key = id; key !== ''; key = key.slice(0, Math.max(0, key.lastIndexOf('/')))) {
    const part = shelter.parts.find((one) => one.id === key);
    if (part !== undefined) {
      return part;
    }
  }
  return undefined;
}

/** The part that the line under the cursor describes: the innermost one written around it. */
export function partAt(
  shelter: PreviewShelter,
  uri: string,
  line: number,
  character: number,
): PreviewPart | undefined {
  let best: PreviewPart | undefined;
  for (const part of shelter.parts) {
    const { range } = part.place;
    if (part.place.uri === uri && line >= range.start.line && line <= range.end.line) {
      if (best === undefined || closer(range, best.place.range, line, character)) {
        best = part;
      }
    }
  }
  return best;
}

function closer(one: PlainRange, other: PlainRange, line: number, character: number): boolean {
  const lines = height(one) - height(other);
  if (lines !== 0) {
    return lines < 0;
  }
  // Several parts on one line: the last that starts before the cursor.
  const before = (range: PlainRange) => range.start.line < line || range.start.character <= character;
  if (before(one) !== before(other)) {
    return before(one);
  }
  return one.start.character > other.start.character;
}

function height(range: PlainRange): number {
  return range.end.line - range.start.line;
}
