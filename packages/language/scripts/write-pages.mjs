// Writes the generated pages. They are made from TypeScript, so it is bundled first.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const root = new URL('../../../', import.meta.url);
// Inside the package, so that what stays outside the bundle is found.
const folder = mkdtempSync(join(here, '.pages-'));
try {
  const outfile = join(folder, 'pages.cjs');
  await build({
    entryPoints: [join(here, 'reference/pages.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    // The examples are found from where the sources stand, not from the bundle.
    define: { 'import.meta.url': JSON.stringify(new URL('reference/pages.ts', import.meta.url).href) },
    logLevel: 'warning',
  });
  const { pages } = (await import(pathToFileURL(outfile).href)).default;
  for (const [path, text] of Object.entries(await pages())) writeFileSync(new URL(path, root), text);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log('pages written');
