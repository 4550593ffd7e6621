// Makes the .vsix: gathers what is shipped into dist/vsix with a manifest free of workspace matters, and
// packs it. Run after build.mjs.
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { promisify } from 'node:util';

const here = new URL('.', import.meta.url);
const stage = new URL('dist/vsix/', here);
const run = promisify(execFile);

const manifest = JSON.parse(await readFile(new URL('package.json', here), 'utf8'));
for (const key of ['private', 'type', 'exports', 'scripts', 'dependencies', 'devDependencies']) {
  delete manifest[key];
}
manifest.name = 'tautline';

await rm(stage, { recursive: true, force: true });
await mkdir(new URL('dist/', stage), { recursive: true });
const built = (await readdir(new URL('dist/', here))).filter((name) => /\.(cjs|js|css|json)$/.test(name));
for (const name of built) {
  await cp(new URL(`dist/${name}`, here), new URL(`dist/${name}`, stage));
}
for (const name of ['language-configuration.json', 'syntaxes', 'media', 'README.md']) {
  await cp(new URL(name, here), new URL(name, stage), { recursive: true });
}
const licence = new URL('LICENSE', here);
const licensed = existsSync(licence);
if (licensed) {
  await cp(licence, new URL('LICENSE', stage));
} else {
  console.warn('There is no LICENSE in this folder: the package is made without one.');
}
await writeFile(new URL('package.json', stage), `${JSON.stringify(manifest, null, 2)}\n`);

const file = new URL(`dist/tautline-${manifest.version}.vsix`, here).pathname;
const vsce = createRequire(import.meta.url).resolve('@vscode/vsce/vsce');
const packing = await run(
  process.execPath,
  [
    vsce,
    'package',
    '--no-dependencies',
    '--allow-missing-repository',
    '--no-rewrite-relative-links',
    ...(licensed ? [] : ['--skip-license']),
    '-o',
    file,
  ],
  { cwd: stage.pathname },
);
process.stdout.write(packing.stdout);
process.stderr.write(packing.stderr);
await rm(stage, { recursive: true, force: true });
console.log(`${file.slice(here.pathname.length)}: ${((await stat(file)).size / 1000).toFixed(1)} kB`);
