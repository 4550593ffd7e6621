// Bundles the command line to dist/tautline.mjs. `highs` stays outside: it loads its own WebAssembly file.
import { build } from 'esbuild';

await build({
  entryPoints: [new URL('src/main.ts', import.meta.url).pathname],
  outfile: new URL('dist/tautline.mjs', import.meta.url).pathname,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  external: ['highs'],
  // Bundled CommonJS parts ask for `require`.
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module';\nconst require = __createRequire(import.meta.url);",
  },
  legalComments: 'none',
  logLevel: 'warning',
});
