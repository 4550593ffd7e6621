#!/usr/bin/env node
import { availableParallelism } from 'node:os';
import { isMainThread } from 'node:worker_threads';
import { run } from './run.ts';
import { serveTasks } from './threads/serve.ts';

// The bundle is its own thread script.
if (isMainThread) {
  // A reader that has seen enough (`| head`) closes the pipe: that ends the program, and is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(process.exitCode ?? 0);
  });
  process.exitCode = await run(
    process.argv.slice(2),
    {
      out: (text) => process.stdout.write(text),
      err: (text) => process.stderr.write(text),
    },
    {
      threadScript: new URL(import.meta.url),
      threads: availableParallelism(),
      progress: (line) => {
        if (process.stderr.isTTY) process.stderr.write(`\r\u001b[2K${line}`);
      },
      untilStopped: () => {
        const controller = new AbortController();
        // A second interrupt ends the program as usual.
        process.once('SIGINT', () => controller.abort());
        return controller.signal;
      },
    },
  );
} else serveTasks();
