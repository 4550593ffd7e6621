/** The other end of the pool: does the tasks that the main thread posts, one at a time. */
import { parentPort } from 'node:worker_threads';
import { doTask, type Task } from './tasks.ts';

/** Throws Error outside a thread. */
export function serveTasks(): void {
  const port = parentPort;
  if (!port) throw new Error('serveTasks is for threads');
  port.on('message', (task: Task) => {
    doTask(task).then(
      (result) => port.postMessage({ ok: true, result }),
      (error: unknown) =>
        port.postMessage({ ok: false, why: String(error instanceof Error ? (error.stack ?? error) : error) }),
    );
  });
}
