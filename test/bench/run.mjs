// Bundles and runs every bench, one after the other. Benches print ratios and never fail the build:
// a machine under load must not turn a true result red.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'out', 'bench');
mkdirSync(out, { recursive: true });
const wanted = process.argv.slice(2);
const folders = [
  ...readdirSync(join(root, 'packages')).map((name) => join(root, 'packages', name, 'bench')),
  join(root, 'test', 'bench'),
];
const benches = folders
  .filter((folder) => existsSync(folder))
  .flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.bench.ts'))
      .map((name) => join(folder, name)),
  )
  .filter((path) => wanted.length === 0 || wanted.some((word) => path.slice(root.length).includes(word)));

for (const bench of benches) {
  const outfile = join(out, basename(bench).replace(/\.ts$/, '.mjs'));
  await build({
    entryPoints: [bench],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: ['highs'],
    banner: {
      js: "import { createRequire as __createRequire } from 'node:module';\nconst require = __createRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  process.stdout.write(`\n=== ${bench.slice(root.length)}\n`);
  const { status } = spawnSync(process.execPath, ['--expose-gc', outfile], { stdio: 'inherit', cwd: root });
  if (status !== 0) process.stdout.write(`(ended with ${status})\n`);
}
