import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['packages/*/test/**/*.test.ts', 'test/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'test/editor/**'],
    setupFiles: ['test/reference/record.ts'],
    testTimeout: 30_000,
    // One worker for each core: the tests calculate, they hardly wait.
    maxWorkers: '100%',
    // The files share what they import: reading it again for each took a third of the time.
    isolate: false,
  },
});
