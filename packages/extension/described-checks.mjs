// The language server says what checks are called, ask and lean on; only its analysis worker runs them. For
// the server's bundle, '@tautline/checks' is therefore their description, taken from the registry itself, and
// the calculation stays out of it. A name that the description lacks fails the build. What runs in a worker
// alone may name any calculation; called in the server it says that it is elsewhere.
import { build } from 'esbuild';

const inWorker =
  /\/(language\/src\/analyst\/(work-out|whole-house)|extension\/src\/server\/\w+-job|review\/src\/keeping\/duties)\.ts$/;

/**
 * The esbuild plugin, and the page that explains each check, by id; `settings` are those of the bundles. The
 * pages are a file of their own, which the client reads when somebody asks: they would double the server.
 */
export async function describedChecks(settings) {
  const bundled = await build({
    ...settings,
    stdin: { contents: "export * from '@tautline/checks';", resolveDir: settings.absWorkingDir },
    format: 'esm',
    platform: 'node',
    write: false,
  });
  const [{ contents }] = bundled.outputFiles;
  const all = await import(`data:text/javascript;base64,${Buffer.from(contents).toString('base64')}`);
  const from = (name) => JSON.stringify(new URL(`../checks/src/${name}.ts`, import.meta.url).pathname);
  // Hover, completion and findings tell these of a check; all of it stands on its page.
  const told = all.checks.map(({ id, title, nature, asks, matters, leavesOut }) => ({
    id,
    title,
    nature,
    asks,
    matters,
    leavesOut,
  }));
  const description = `
    export { measuredText, messageText } from ${from('text')};
    export { hardestOf } from ${from('hardest')};
    export { stormOff } from ${from('storm-off')};
    export { verdictText } from ${from('verdict-text')};
    export const checks = ${JSON.stringify(told)};
    export const sources = ${JSON.stringify(all.sources)};
    export const wholeHouseChecks = new Set(${JSON.stringify([...all.wholeHouseChecks])});
    export const checkOf = (id) => checks.find((check) => check.id === id);
  `;
  const elsewhere = `
    const elsewhere = () => { throw new Error('this is calculated in the analysis worker'); };
    ${Object.keys(all)
      .map((name) => `export const ${name} = elsewhere;`)
      .join('\n')}
  `;
  const pages = Object.fromEntries(all.checks.map((check) => [check.id, all.explanationPage(check)]));
  const plugin = {
    name: 'described-checks',
    setup(bundling) {
      bundling.onResolve({ filter: /^@tautline\/checks$/ }, ({ importer }) => ({
        path: inWorker.test(importer) ? 'elsewhere' : 'description',
        namespace: 'checks',
        sideEffects: false,
      }));
      bundling.onLoad({ filter: /.*/, namespace: 'checks' }, ({ path }) => ({
        contents: path === 'elsewhere' ? elsewhere : description,
        loader: 'js',
        resolveDir: settings.absWorkingDir,
      }));
    },
  };
  return { plugin, pages };
}
