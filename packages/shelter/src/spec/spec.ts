/**
 * The spec: what was written, one node a fact, matched against the vocabulary but not yet resolved.
 * Values are SI. The spec is what edits (fixes, variants, `vary`) act on, so an edit and a retyped
 * line go through the very same resolver.
 */
import type { KindName } from '@tautline/quantity';
import type { Origin } from '../model/origin.ts';

export type SpecValue =
  | { readonly type: 'quantity'; readonly si: number; readonly kind: KindName; readonly origin: Origin }
  | { readonly type: 'word'; readonly word: string; readonly origin: Origin }
  | { readonly type: 'item'; readonly id: string; readonly origin: Origin }
  | { readonly type: 'text'; readonly text: string; readonly origin: Origin }
  | { readonly type: 'date'; readonly date: string; readonly origin: Origin };

export interface SpecNode {
  /**
   * Keyword of the fact: 'bows', 'rise', 'foot', ... A clause said inside the line (`bows spaced 1.2 m {`)
   * and the same fact said in the block (`bows { spaced 1.2 m }`) both end as a child node.
   */
  readonly word: string;
  /** Values by slot name of the vocabulary's sentence. */
  readonly slots: Readonly<Record<string, SpecValue>>;
  readonly children: readonly SpecNode[];
  readonly origin: Origin;
}

/** A named top-level block: site, shelter, stock item, variant. */
export interface SpecDefinition extends SpecNode {
  readonly name: string;
  /** Doc comment above it, cleaned of comment marks. */
  readonly doc: string;
  /** Item it is like, if any. */
  readonly like?: string;
}

/** Everything one shelter needs, gathered from its file and the files it imports. */
export interface SpecWorld {
  readonly definitions: ReadonlyMap<string, SpecDefinition>;
  /** The system most quantities of the file itself are written in, where that can be told. */
  readonly written?: 'metric' | 'us';
}

/** A change to the spec. The language layer turns the same edit into a text edit. */
export type SpecEdit =
  /** Gives a fact of a block new values; adds the fact when the block does not have it. */
  | {
      readonly type: 'set';
      readonly block: Origin;
      readonly word: string;
      readonly slots: Readonly<Record<string, SpecValue>>;
    }
  /** Replaces the values of exactly this node (one of several facts with the same word). */
  | { readonly type: 'replace'; readonly node: Origin; readonly slots: Readonly<Record<string, SpecValue>> }
  | { readonly type: 'add'; readonly block: Origin; readonly node: SpecNode }
  | { readonly type: 'remove'; readonly node: Origin };

export interface Problem {
  readonly id: string;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly origin: Origin;
}
