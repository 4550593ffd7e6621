/** What the resolver says of a spec, beside what the language has said of its words: one voice, nothing twice. */
import type { Span } from '../spec/origin-key.ts';

/**
 * Whether a problem found later, at this place, only repeats one the language found in these words, or a
 * fact is missed that may stand in a line which has run into another.
 */
export function isEcho(id: string, span: Span, told: readonly (Span & { readonly id: string })[]): boolean {
  return told.some(
    (other) =>
      (span.start <= other.end && other.start <= span.end) ||
      (id === 'missing-fact' && other.id === 'own-line'),
  );
}

/** A resolver's message as a sentence. */
export function asSentence(message: string): string {
  const text = message.charAt(0).toUpperCase() + message.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
