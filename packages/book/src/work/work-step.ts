/** One step of the work. */
export interface WorkStep {
  readonly title: string;
  readonly does: readonly string[];
  readonly tools: readonly string[];
  /** People it takes. */
  readonly hands: number;
  readonly caution?: string;
}
