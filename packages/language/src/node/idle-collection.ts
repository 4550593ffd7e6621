/** Tidies memory up while nobody waits, so that it is not done between a keystroke and its answer. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** How long nothing must have been asked or answered, ms: longer than between the parts of one answer. */
const REST = 12;

/**
 * Called whenever something was done; once it rests, what was made and dropped since is collected. Reading a text
 * anew leaves about as much behind as the engine lets gather before it stops to collect.
 */
export function idleCollection(): () => void {
  const collect = minorCollection();
  if (!collect) return () => undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(collect, REST);
    timer.unref();
  };
}

/** Of the young objects alone, milliseconds; undefined where the engine does not give it. */
function minorCollection(): (() => void) | undefined {
  try {
    setFlagsFromString('--expose-gc');
    const collect: unknown = runInNewContext('gc');
    return typeof collect === 'function' ? () => collect({ type: 'minor' }) : undefined;
  } catch {
    return undefined;
  }
}
