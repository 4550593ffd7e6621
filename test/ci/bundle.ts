/** The command line as users have it: bundled, in a process of its own. */
import { execFile, execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const cli = fileURLToPath(new URL('../../packages/cli/', import.meta.url));
export const tautlinePath = `${cli}dist/tautline.mjs`;

export function buildBundle(): void {
  execFileSync(process.execPath, [`${cli}build.mjs`]);
}

export function bundled(
  words: readonly string[],
  folder: string,
): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      [tautlinePath, ...words],
      { cwd: folder, maxBuffer: 1 << 28 },
      (error, out, err) => resolve({ code: error === null ? 0 : Number(error.code), out, err }),
    );
  });
}
