// Asks the laws of many random houses: `node test/laws/night.mjs [houses] [seed]`, 10,000 of seed 15 unless said.
// It may be stopped and goes on where it was; what it found is kept in `out/laws-SEED.json`.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const repository = fileURLToPath(new URL('../../', import.meta.url));
const outfile = `${repository}out/laws-night.mjs`;
await build({
  entryPoints: [fileURLToPath(new URL('night.ts', import.meta.url))],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
  // What some packages still ask for.
  banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
});
const [, , ...said] = process.argv;
const { status } = spawnSync(process.execPath, [outfile, repository, ...said], { stdio: 'inherit' });
process.exit(status ?? 1);
