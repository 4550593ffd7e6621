/** What the server and its analysis worker say to each other. Plain data. */
import type { SpecDefinition } from '@tautline/shelter';
import type { AnalysisOptions, AnalysisResult, FixRequest, PricedFix } from './analyst.ts';

export type Definitions = readonly (readonly [string, SpecDefinition])[];

export type ToWorker =
  /** Definitions that every world to come has too: the catalogue, sent once. */
  | { readonly type: 'know'; readonly definitions: Definitions }
  | {
      readonly type: 'analyse';
      readonly id: number;
      readonly own: Definitions;
      readonly shelter: string;
      readonly options: AnalysisOptions;
    }
  | {
      readonly type: 'fixes';
      readonly id: number;
      readonly own: Definitions;
      readonly shelter: string;
      readonly request: FixRequest;
    }
  | { readonly type: 'cancel'; readonly id: number };

export type FromWorker =
  | { readonly type: 'analysed'; readonly id: number; readonly result: AnalysisResult }
  | { readonly type: 'fixed'; readonly id: number; readonly fixes: readonly PricedFix[] }
  /** A question taken back before it was begun. */
  | { readonly type: 'dropped'; readonly id: number };

/** One end of the line to the other side: a worker thread, a web worker, or in tests a plain queue. */
export interface Port<Out, In> {
  post(message: Out): void;
  onMessage(listener: (message: In) => void): void;
  /** Called once when the other side is gone. */
  onGone(listener: (reason: string) => void): void;
  close(): void;
}
