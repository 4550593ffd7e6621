// Writes CHECKS.md from the checks' own explanations and specs. A test holds the file to them.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

await import('./embed-specs.mjs');
const { outputFiles } = await build({
  entryPoints: [fileURLToPath(new URL('../src/reference.ts', import.meta.url))],
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  mainFields: ['module', 'main'],
  write: false,
});
const code = outputFiles[0].text;
const { checkReference } = await import(
  `data:text/javascript;base64,${Buffer.from(code).toString('base64')}`
);
writeFileSync(new URL('../CHECKS.md', import.meta.url), checkReference());
