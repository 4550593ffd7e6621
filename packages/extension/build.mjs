// Bundles everything the extension ships into dist/: nothing is resolved at run time but `vscode` itself.
// `node build.mjs` builds minified and fails when a bundle outgrows its budget; `--watch` rebuilds.
import { mkdir, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { build, context } from 'esbuild';
import { describedChecks } from './described-checks.mjs';
import { snippets, templates } from './templates.mjs';

const here = new URL('.', import.meta.url);
const out = new URL('dist/', here);
const watch = process.argv.includes('--watch');

// One copy of what the protocol's packages share: without these, its types come in once for each kind of
// module, and its message layer once for each version.
const require = createRequire(import.meta.url);
const alias = {
  'vscode-jsonrpc': dirname(require.resolve('vscode-jsonrpc/package.json')),
  'vscode-languageserver-types': require.resolve('vscode-languageserver-types').replace('umd', 'esm'),
};

/** Modules of our own packages do nothing when they are only loaded: what is not used is left out. */
const pure = {
  name: 'pure-packages',
  setup(bundling) {
    bundling.onResolve({ filter: /^(@tautline\/|\.\.?\/)/ }, async ({ path, pluginData, ...from }) => {
      if (pluginData === 'asked' || (path.startsWith('.') && !/\/packages\/\w+\/src\//.test(from.importer))) {
        return undefined;
      }
      const found = await bundling.resolve(path, { ...from, pluginData: 'asked' });
      return { ...found, sideEffects: false, pluginData: undefined };
    });
  },
};

const common = {
  bundle: true,
  minify: !watch,
  sourcemap: watch,
  target: 'es2022',
  logLevel: 'warning',
  legalComments: 'none',
  charset: 'utf8',
  // Packages of the workspace are TypeScript sources behind their front door.
  conditions: ['import', 'default'],
  absWorkingDir: here.pathname,
  alias,
  plugins: [pure],
};
const node = {
  ...common,
  platform: 'node',
  format: 'cjs',
  external: ['vscode'],
  mainFields: ['module', 'main'],
};
const browser = {
  ...common,
  platform: 'browser',
  // The glTF library reads files only where there is Node; here it only writes bytes.
  external: ['node:fs', 'node:path'],
  mainFields: ['browser', 'module', 'main'],
};

const made = await templates();
const { plugin, pages } = await describedChecks(common);
const described = { plugins: [plugin, pure] };

/** Budgets in bytes. */
const kB = 1000;
const bundles = [
  {
    file: 'client.cjs',
    budget: 500 * kB,
    options: { ...node, entryPoints: ['src/client/extension.ts'] },
  },
  {
    file: 'browser-client.js',
    budget: 500 * kB,
    options: {
      ...browser,
      format: 'cjs',
      external: ['vscode', ...browser.external],
      entryPoints: ['src/client/browser.ts'],
    },
  },
  {
    file: 'server.cjs',
    budget: 1000 * kB,
    options: { ...node, ...described, entryPoints: ['src/server/main.ts'] },
  },
  {
    file: 'analysis.cjs',
    budget: 1000 * kB,
    options: { ...node, entryPoints: ['src/server/analysis.ts'] },
  },
  {
    file: 'browser-server.js',
    budget: 1000 * kB,
    options: {
      ...browser,
      ...described,
      format: 'iife',
      entryPoints: ['src/server/browser.ts'],
    },
  },
  {
    file: 'browser-analysis.js',
    budget: 1000 * kB,
    options: { ...browser, format: 'iife', entryPoints: ['src/server/browser-analysis.ts'] },
  },
  {
    file: 'preview.js',
    budget: 700 * kB,
    options: {
      ...browser,
      format: 'iife',
      entryPoints: ['src/preview/main.ts'],
    },
  },
  {
    // The sheet's second script, loaded with the first look at the house in space; see `together`.
    file: 'space.js',
    budget: 700 * kB,
    options: {
      ...browser,
      format: 'iife',
      entryPoints: ['src/preview/space/main.ts'],
    },
  },
  {
    file: 'preview.css',
    budget: 40 * kB,
    options: { ...browser, entryPoints: ['src/preview/sheet.css'] },
  },
];

await rm(out, { recursive: true, force: true });
await mkdir(out, { recursive: true });
await writeFile(new URL('templates.json', out), JSON.stringify(made));
await writeFile(new URL('explanations.json', out), JSON.stringify(pages));
await writeFile(new URL('snippets.json', out), JSON.stringify(snippets(made), null, 2));
const tooBig = [];
/** The scripts of the drawing sheet's page keep one budget between them. */
const together = { files: ['preview.js', 'space.js'], budget: 700 * kB };
let togetherSize = 0;
for (const { file, budget, options } of bundles) {
  const settings = { ...options, outfile: new URL(file, out).pathname };
  if (watch) {
    await (await context(settings)).watch();
    continue;
  }
  await build(settings);
  const { size } = await stat(new URL(file, out));
  const line = `${file.padEnd(20)} ${(size / kB).toFixed(1).padStart(8)} kB of ${budget / kB} kB`;
  console.log(size > budget ? `${line}  TOO BIG` : line);
  if (size > budget) {
    tooBig.push(file);
  }
  if (together.files.includes(file)) {
    togetherSize += size;
  }
}
if (togetherSize > together.budget) {
  tooBig.push(together.files.join(' + '));
}
if (tooBig.length > 0) {
  console.error(`Over budget: ${tooBig.join(', ')}`);
  process.exitCode = 1;
}
