/**
 * Where the words are now that results were worked out from. Until there are new results, the old ones stay
 * at their words while these move, also when the text is for a moment no text that can be read.
 */
import type { Origin } from '@tautline/shelter';
import { type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import type { File } from '../generated/ast.ts';
import { placeOf, type Span, spanOf } from '../spec/origin-key.ts';
import { fileOf } from './scope.ts';

/** A text at the time its results were worked out. */
export interface Written {
  readonly uri: string;
  readonly text: string;
  readonly file: File;
}

export function writtenNow(document: LangiumDocument): Written | undefined {
  const file = fileOf(document);
  return file && { uri: document.uri.toString(), text: document.textDocument.getText(), file };
}

/**
 * Where an origin is, if its file is open to the server. `written` is the text it was made from; without
 * one, or for another file, the text as it is now.
 */
export function locate(
  origin: Origin,
  documents: LangiumDocuments,
  written?: Written,
): (Span & { document: LangiumDocument }) | undefined {
  const place = placeOf(origin);
  const document = place && documents.getDocument(URI.parse(place.uri));
  if (!document) return undefined;
  const before = written?.uri === place.uri ? written : undefined;
  const file = before?.file ?? fileOf(document);
  const span = file && spanOf(file, origin);
  if (!span) return undefined;
  return { ...(before ? moved(span, before, document.textDocument.getText()) : span), document };
}

interface Difference {
  readonly after: string;
  /** Length of what both texts start with, and of what both end with. */
  readonly start: number;
  readonly end: number;
}

const differences = new WeakMap<Written, Difference>();

/** A span of an earlier text in a later one: where nothing changed, the same words. */
export function moved(span: Span, before: Written, after: string): Span {
  if (before.text === after) return span;
  let difference = differences.get(before);
  if (difference?.after !== after) {
    difference = differenceOf(before.text, after);
    differences.set(before, difference);
  }
  const { start, end } = difference;
  const shift = after.length - before.text.length;
  const fixed = (offset: number): number | undefined => {
    if (offset < start) return offset;
    return offset > before.text.length - end ? offset + shift : undefined;
  };
  // An end in the middle of what changed goes to the end of the line there: what is typed stays before it.
  const typed = after.slice(start, after.length - end);
  const line = typed.search(/\r?\n/);
  const to = fixed(span.end) ?? start + (line < 0 ? typed.length : line);
  return { start: Math.min(fixed(span.start) ?? start, to), end: to };
}

function differenceOf(before: string, after: string): Difference {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === after.charCodeAt(start)) start += 1;
  let end = 0;
  while (
    end < most - start &&
    before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end)
  )
    end += 1;
  return { after, start, end };
}
