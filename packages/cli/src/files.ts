/** Finding and reading `.shelter` files. */
import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { checks } from '@tautline/checks';
import { type LoadedWorkspace, loadWorkspace, type SourceFile } from '@tautline/language';
import { CannotRun } from './exit.ts';

const ending = '.shelter';
/** Folders that never hold a grower's specs. */
const skipped = new Set(['node_modules', 'dist', 'out']);

/** Whether a path (with forward slashes) is a spec file in none of the folders that are passed over. */
export function isSpecPath(path: string): boolean {
  const folders = path.split('/').slice(0, -1);
  return path.endsWith(ending) && !folders.some((name) => name.startsWith('.') || skipped.has(name));
}

/** All shelter files at or below the paths, sorted, each once. */
export async function shelterFiles(paths: readonly string[]): Promise<string[]> {
  const found = new Set<string>();
  for (const path of paths) {
    const full = resolve(path);
    const kind = await stat(full).catch(() => undefined);
    if (kind === undefined) {
      const slashes =
        path.includes('\\') && sep === '/' ? ' Here, paths are written with forward slashes.' : '';
      throw new CannotRun(`There is no file or folder '${path}'.${slashes}`);
    }
    if (kind.isFile()) found.add(full);
    else for (const file of await below(full)) found.add(file);
  }
  return [...found].sort();
}

async function below(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const lists = await Promise.all(
    entries.map((entry) => {
      const full = join(folder, entry.name);
      if (entry.isDirectory())
        return entry.name.startsWith('.') || skipped.has(entry.name) ? [] : below(full);
      return entry.isFile() && entry.name.endsWith(ending) ? [full] : [];
    }),
  );
  return lists.flat();
}

/** Reads and loads files; imports may reach anywhere inside the working folder, or the file's own folder outside it. */
export async function load(files: readonly string[]): Promise<LoadedWorkspace> {
  return loadTexts(await Promise.all(files.map(async (file) => ({ file, text: await textOf(file) }))));
}

/** Loads texts as if they stood in these files, under the same rule for imports. */
export async function loadTexts(
  texts: readonly { readonly file: string; readonly text: string }[],
): Promise<LoadedWorkspace> {
  const sources: SourceFile[] = texts.map(({ file, text }) => ({ uri: pathToFileURL(file).href, text }));
  const roots = new Set<string>();
  for (const { file } of texts) roots.add(inside(process.cwd(), file) ? process.cwd() : dirname(file));
  const folders = [...roots];
  return loadWorkspace(
    sources,
    async (uri) => {
      const path = fileURLToPath(uri);
      // A link must not lead out of the folders that imports may reach.
      const real = await realpath(path).catch(() => undefined);
      if (real === undefined || !folders.some((folder) => inside(folder, real))) return undefined;
      return textOf(real).catch(() => undefined);
    },
    {
      roots: folders.map((folder) => pathToFileURL(folder).href),
      checks: new Set(checks.map((check) => check.id)),
    },
  );
}

async function textOf(file: string): Promise<string> {
  // Bytes that are no text become replacement marks, which the reader reports as binary content.
  return (await readFile(file)).toString('utf8');
}

function inside(folder: string, file: string): boolean {
  const way = relative(folder, file);
  return way !== '' && !way.startsWith('..') && !isAbsolute(way);
}

/** A URI as a path from the working folder, with forward slashes. */
export function shownPath(uri: string): string {
  if (!uri.startsWith('file:')) return uri;
  const path = relative(process.cwd(), fileURLToPath(uri));
  return path.split(sep).join('/');
}
