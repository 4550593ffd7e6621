/** A source a reader can look up. */
export interface Source {
  /** Short id, e.g. 'asce7-16:26.10'. */
  readonly id: string;
  readonly title: string;
  /** Clause, table or equation. */
  readonly where: string;
  /** How sure we are of the value we use. */
  readonly standing: 'published' | 'from memory' | 'common practice, no source' | 'derived';
}
