/**
 * How the vocabulary is described. The vocabulary is the single source of what can be said: reading,
 * completion, hover, problems, snippets and the language reference are all made from it.
 */
import type { KindName } from '@tautline/quantity';

/** What a place in a sentence takes. */
export type Takes =
  | { readonly type: 'quantity'; readonly kind: KindName }
  /** One of the words; any single word when the list is empty (a name the user makes up). */
  | { readonly type: 'word'; readonly words: readonly string[] }
  /** `form` is offered alone, where the kind has forms: `item supply of screw`. */
  | { readonly type: 'item'; readonly kinds: readonly string[]; readonly form?: string }
  | { readonly type: 'definition'; readonly of: 'site' | 'shelter' }
  | { readonly type: 'check' }
  | { readonly type: 'comparison' }
  | { readonly type: 'text' }
  | { readonly type: 'date' };

export type Piece =
  | { readonly type: 'literal'; readonly word: string }
  | { readonly type: 'slot'; readonly slot: string; readonly takes: Takes }
  | { readonly type: 'optional'; readonly pieces: readonly Piece[] };

/** A fact or block that can be said inside a block. */
export interface Entry {
  readonly word: string;
  /**
   * The sentence after the word, e.g. `{width: length} by {length: length}`,
   * `{check: check} because {reason: text} [until {until: date}]`, `{item: item pipe|rod}`,
   * `{shape: word elastic|arc|pointed}`, `{name: word *}` for any word. Compiled to pieces when the
   * vocabulary loads. A reader takes the sentence first (each optional group if it fits, else without it),
   * then clauses: facts of this entry, each with its own sentence, in any order.
   *
   * Slot names: the only quantity, word, text or date of a fact is `value`, the only item is `item`;
   * facts with more than one value name each.
   */
  readonly sentence: string;
  /** What it says, for hover and the reference; one or two sentences for a grower. */
  readonly doc: string;
  /** A line that uses it. */
  readonly example: string;
  /** May be said several times in one block. */
  readonly many?: boolean;
  /** Other words that people say for it; they are not read, but told what it is called here. */
  readonly also?: readonly string[];
  readonly required?: boolean;
  /** Facts of its block, and clauses of its line. Named so that blocks can share. */
  readonly facts?: readonly Entry[];
}

/** A kind of top-level definition: site, shelter, or a kind of stock item. */
export interface DefinitionKind extends Entry {
  /** Whether a name follows the word; the `sentence` is what follows the name. */
  readonly named: boolean;
  readonly defines: 'project' | 'site' | 'shelter' | 'item' | 'variant' | 'range' | 'prices' | 'yard';
}
