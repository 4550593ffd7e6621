/** What review asks of git: files of a revision, renames, and nothing that changes the repository. */
import { execFile, spawn } from 'node:child_process';
import { lstat, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { CannotRun } from '../exit.ts';
import { isSpecPath } from '../files.ts';

const execute = promisify(execFile);
/** Larger than any list of names that git has to tell here, bytes. */
const mostOutput = 256 * 1024 * 1024;

export interface TextFile {
  /** From the root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** A repository, bare or with a working tree. */
export interface Repository {
  readonly folder: string;
  /** Top of the working tree; absent in a bare repository. */
  readonly top?: string;
}

/** Runs git. Throws CannotRun with what git said. */
export async function git(folder: string, words: readonly string[]): Promise<string> {
  try {
    const { stdout } = await execute('git', [...words], { cwd: folder, maxBuffer: mostOutput });
    return stdout;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw new CannotRun('Git is needed to compare revisions, and cannot be started here.');
    const said = error instanceof Error && 'stderr' in error ? String(error.stderr).trim() : String(error);
    throw new CannotRun(`git ${words[0]}: ${said}`);
  }
}

export async function repositoryAt(folder: string): Promise<Repository> {
  await git(folder, ['rev-parse', '--git-dir']).catch((error: unknown) => {
    if (!(error instanceof CannotRun) || !error.message.includes('not a git repository')) throw error;
    throw new CannotRun(
      `The folder '${folder}' is in no git repository: go into one, name one with --repository DIR, or compare two folders.`,
    );
  });
  const bare = (await git(folder, ['rev-parse', '--is-bare-repository'])).trim() === 'true';
  if (bare) return { folder };
  return { folder, top: (await git(folder, ['rev-parse', '--show-toplevel'])).trim() };
}

/** The commit of a revision. Throws CannotRun when there is none of that name. */
export async function commitOf({ folder }: Repository, revision: string): Promise<string> {
  if (revision.startsWith('-')) throw new CannotRun(`'${revision}' is no revision.`);
  const found = await git(folder, ['rev-parse', '--verify', '--quiet', `${revision}^{commit}`]).catch(
    () => '',
  );
  if (found.trim() === '')
    throw new CannotRun(`There is no revision '${revision}' in this repository, and no folder of that name.`);
  return found.trim();
}

/** Where two lines of work parted: what a pull request is compared with. */
export async function partingOf({ folder }: Repository, a: string, b: string): Promise<string> {
  const found = await git(folder, ['merge-base', a, b]).catch(() => '');
  if (found.trim() === '') throw new CannotRun('The two revisions have no commit in common.');
  return found.trim();
}

/** Spec files of a commit. Links are left out: they name another file, which is read by itself. */
export async function filesAt({ folder }: Repository, commit: string): Promise<TextFile[]> {
  const listed = await git(folder, ['ls-tree', '-r', '-z', '--full-tree', commit]);
  const entries = listed.split('\0').flatMap((line) => {
    const match = /^100\d{3} blob ([0-9a-f]+)\t(.*)$/s.exec(line);
    const [, object = '', path = ''] = match ?? [];
    return match && isSpecPath(path) ? [{ object, path }] : [];
  });
  const texts = await blobs(
    folder,
    entries.map(({ object }) => object),
  );
  return entries.map(({ path }, index) => ({ path, text: texts[index] ?? '' }));
}

/** Spec files as they lie in the working tree, ignored ones left out. */
export async function filesInTree({ folder, top }: Repository): Promise<TextFile[]> {
  if (top === undefined)
    throw new CannotRun('A bare repository has no working tree: say both revisions to compare.');
  const listed = await git(top, [
    'ls-files',
    '-z',
    '--cached',
    '--others',
    '--exclude-standard',
    '--full-name',
  ]);
  const paths = [...new Set(listed.split('\0'))].filter(isSpecPath).sort();
  const files = await Promise.all(
    paths.map(async (path): Promise<TextFile[]> => {
      const full = join(top ?? folder, path);
      const kind = await lstat(full).catch(() => undefined);
      // Taken away, but not yet from the index.
      if (!kind?.isFile()) return [];
      return [{ path, text: (await readFile(full)).toString('utf8') }];
    }),
  );
  return files.flat();
}

/** Old path to new path of the files that moved, as git finds them; up to the working tree without `to`. */
export async function renamesBetween(
  { folder, top }: Repository,
  from: string,
  to: string | undefined,
): Promise<Map<string, string>> {
  const listed = await git(top ?? folder, [
    'diff',
    '--no-ext-diff',
    '--no-textconv',
    '-M',
    '--name-status',
    '-z',
    '--diff-filter=R',
    from,
    ...(to === undefined ? [] : [to]),
    '--',
    '*.shelter',
  ]);
  const words = listed.split('\0');
  const renamed = new Map<string, string>();
  for (let at = 0; at + 2 < words.length; at += 3) renamed.set(words[at + 1] ?? '', words[at + 2] ?? '');
  return renamed;
}

/** Contents of objects, in the order asked, by one process. */
async function blobs(folder: string, objects: readonly string[]): Promise<string[]> {
  if (objects.length === 0) return [];
  const child = spawn('git', ['cat-file', '--batch'], { cwd: folder, stdio: ['pipe', 'pipe', 'ignore'] });
  child.stdin.end(`${objects.join('\n')}\n`);
  const chunks: Buffer[] = [];
  for await (const chunk of child.stdout) chunks.push(chunk as Buffer);
  const all = Buffer.concat(chunks);
  const texts: string[] = [];
  let at = 0;
  while (at < all.length && texts.length < objects.length) {
    const end = all.indexOf(10, at);
    const size = Number(/ blob (\d+)$/.exec(all.toString('latin1', at, end))?.[1]);
    if (end < 0 || !Number.isFinite(size))
      throw new CannotRun('git cat-file gave an answer that cannot be read.');
    texts.push(all.toString('utf8', end + 1, end + 1 + size));
    at = end + 1 + size + 1;
  }
  return texts;
}
