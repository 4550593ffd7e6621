/** What the machine gives a command besides its arguments: threads, a place for progress, a way to be stopped. */
export interface Machine {
  /** Bundled script that serves tasks when started as a thread; without one, work is done in this thread. */
  readonly threadScript?: URL;
  /** How many threads to use at most. */
  readonly threads: number;
  /** Shows how far a long command is; the next call writes over it, '' wipes it. */
  progress(line: string): void;
  /** From the first call on, an interrupt no longer ends the program but aborts this signal. */
  untilStopped(): AbortSignal;
}

/** No threads, no progress, nobody who stops it: what tests and other programs run commands with. */
export const quietMachine: Machine = {
  threads: 1,
  progress: () => undefined,
  untilStopped: () => new AbortController().signal,
};
