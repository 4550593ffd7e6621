/** Memory is tidied up between keystrokes, not between a keystroke and its answer. */
import { constants, type PerformanceEntry, PerformanceObserver } from 'node:perf_hooks';
import { expect, it } from 'vitest';
import { idleCollection } from '../src/node-door.ts';

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
interface Collection {
  readonly kind: number;
  readonly flags: number;
}

it('waits until nothing is done any more, then collects the young once', async () => {
  const forced: Collection[] = [];
  const observer = new PerformanceObserver((list) => {
    for (const { detail } of list.getEntries() as (PerformanceEntry & { detail: Collection })[])
      if ((detail.flags & constants.NODE_PERFORMANCE_GC_FLAGS_FORCED) !== 0) forced.push(detail);
  });
  observer.observe({ entryTypes: ['gc'] });
  try {
    const rested = idleCollection();
    for (let time = 0; time < 5; time += 1) {
      rested();
      await pause(2);
    }
    expect(forced).toEqual([]);
    await pause(100);
    expect(forced.map(({ kind }) => kind)).toEqual([constants.NODE_PERFORMANCE_GC_MINOR]);
  } finally {
    observer.disconnect();
  }
});
