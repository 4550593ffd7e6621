// A workspace that lies on no disk: an extension of the tests holds the files in memory, and a workspace file names
// its folder.
import { cp, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

const source = new URL('virtual-folder/', import.meta.url);
const { createVSIX } = createRequire(new URL('../../packages/extension/package.json', import.meta.url))(
  '@vscode/vsce',
);

/** Gives the packaged extension and the workspace file, both made below `home`. `only` are names of examples. */
export async function virtualFolder(examples, home, only) {
  const folder = new URL('virtual-folder/', home);
  await mkdir(folder, { recursive: true });
  await cp(new URL('package.json', source), new URL('package.json', folder));
  const files = {};
  for (const name of await readdir(examples)) {
    if (only.includes(name)) {
      files[name] = await readFile(new URL(name, examples), 'utf8');
    }
  }
  const provider = await readFile(new URL('provider.cjs', source), 'utf8');
  await writeFile(
    new URL('extension.js', folder),
    provider.replace(/\bFILES\b/, () => JSON.stringify(files)),
  );
  await writeFile(new URL('LICENSE', folder), 'MIT\n');
  const vsix = new URL('virtual-folder.vsix', home).pathname;
  await createVSIX({
    cwd: folder.pathname,
    packagePath: vsix,
    dependencies: false,
    allowMissingRepository: true,
    skipLicense: true,
  });
  const workspace = new URL('growers.code-workspace', home);
  await writeFile(
    workspace,
    JSON.stringify({ folders: [{ uri: 'growers-mem:/growers', name: 'in memory' }] }),
  );
  return { vsix, workspace };
}
