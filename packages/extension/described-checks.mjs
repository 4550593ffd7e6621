// The language server says what checks are called, ask and lean on; only its analysis worker runs them. For
// the server's bundle, '@tautline/checks' is therefore their description, taken from the registry itself, and
// the calculation stays out of it. A name that is missing here fails the build.
import { build } from 'esbuild';

/** An esbuild plugin; `settings` are those of the bundles. */
export async function describedChecks(settings) {
  const bundled = await build({
    ...settings,
    stdin: {
      contents: "export { checks, sources } from '@tautline/checks';",
      resolveDir: settings.absWorkingDir,
    },
    format: 'esm',
    platform: 'node',
    write: false,
  });
  const [{ contents }] = bundled.outputFiles;
  const { checks, sources } = await import(
    `data:text/javascript;base64,${Buffer.from(contents).toString('base64')}`
  );
  const text = new URL('../checks/src/text.ts', import.meta.url).pathname;
  const source = `
    export { measuredText, messageText } from ${JSON.stringify(text)};
    export const checks = ${JSON.stringify(checks)};
    export const sources = ${JSON.stringify(sources)};
    export const checkOf = (id) => checks.find((check) => check.id === id);
    const elsewhere = () => { throw new Error('checks are run by the analysis worker'); };
    export const evaluate = elsewhere;
    export const fixesFor = elsewhere;
  `;
  return {
    name: 'described-checks',
    setup(bundling) {
      bundling.onResolve({ filter: /^@tautline\/checks$/ }, () => ({
        path: 'checks',
        namespace: 'described',
        sideEffects: false,
      }));
      bundling.onLoad({ filter: /.*/, namespace: 'described' }, () => ({
        contents: source,
        loader: 'js',
        resolveDir: settings.absWorkingDir,
      }));
    },
  };
}
