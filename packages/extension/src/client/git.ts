import type { CommittedAnswer } from '@tautline/language/protocol';
import { type Event, extensions, Uri, workspace } from 'vscode';
import { mostAlike } from './alike.ts';

/** What is used of the editor's own git extension, version 1 of its interface. */
interface Git {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: Event<'uninitialized' | 'initialized'>;
  getRepository(uri: Uri): Repository | null;
  openRepository?(root: Uri): Promise<Repository | null>;
}
/** `originalUri` is where the file was; the same as `uri` where it was not moved. */
interface Change {
  readonly uri: Uri;
  readonly originalUri: Uri;
}
interface Repository {
  readonly state: {
    readonly HEAD: { readonly commit?: string } | undefined;
    readonly indexChanges: readonly Change[];
    readonly workingTreeChanges: readonly Change[];
  };
  status(): Promise<void>;
  /** Text of a file as it stands in a revision; rejects when there is none. */
  show(revision: string, path: string): Promise<string>;
}
interface GitExtension {
  readonly enabled: boolean;
  getAPI(version: 1): Git;
}

/** How long git may take to look around in a workspace that was just opened, ms. */
const patience = 10_000;

/** Text of a file of the workspace as last committed; why not, where git or a commit is missing. */
export async function committed(address: string): Promise<CommittedAnswer> {
  const uri = Uri.parse(address);
  const git = await gitApi();
  if (git === undefined) {
    return { why: 'Git is not at hand in this window: there is no last commit to compare with.' };
  }
  const repository = git.getRepository(uri) ?? (await git.openRepository?.(Uri.joinPath(uri, '..'))) ?? null;
  if (repository === null) {
    return { why: 'This file lies in no git repository: there is no last commit to compare with.' };
  }
  if (repository.state.HEAD?.commit === undefined) {
    await repository.status();
  }
  const commit = repository.state.HEAD?.commit;
  if (commit === undefined) {
    return { why: 'Nothing was committed yet in this repository.' };
  }
  const label = `the last commit, ${commit.slice(0, 8)}`;
  try {
    return { commit: label, text: await repository.show(commit, uri.fsPath) };
  } catch {
    // The commit is there: it has no such file, at least not under this name.
    const text = await underOldName(repository, commit, uri);
    return text === undefined ? { commit: label } : { commit: label, text };
  }
}

/**
 * The committed text of a file that was renamed since: as git itself says where the new name is staged, otherwise
 * that of the file that has gone from the folder and is most like it.
 */
async function underOldName(repository: Repository, commit: string, uri: Uri): Promise<string | undefined> {
  await repository.status();
  const { indexChanges, workingTreeChanges } = repository.state;
  const changes = [...indexChanges, ...workingTreeChanges];
  const moved = changes.find(
    (one) => one.uri.toString() === uri.toString() && one.originalUri.toString() !== uri.toString(),
  );
  const committedAs = (old: Uri): Promise<string | undefined> =>
    repository.show(commit, old.fsPath).catch(() => undefined);
  if (moved !== undefined) {
    return committedAs(moved.originalUri);
  }
  const now = (await workspace.openTextDocument(uri)).getText();
  const gone: string[] = [];
  for (const { uri: old } of changes) {
    if (old.path.endsWith('.shelter') && !(await exists(old))) {
      gone.push((await committedAs(old)) ?? '');
    }
  }
  return mostAlike(now, gone);
}

const exists = (uri: Uri): Promise<boolean> =>
  Promise.resolve(workspace.fs.stat(uri)).then(
    () => true,
    () => false,
  );

async function gitApi(): Promise<Git | undefined> {
  const extension = extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined) {
    return undefined;
  }
  const exported = extension.isActive ? extension.exports : await extension.activate();
  if (!exported.enabled) {
    return undefined;
  }
  const git = exported.getAPI(1);
  if (git.state !== 'initialized') {
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, patience);
      git.onDidChangeState(() => {
        clearTimeout(timer);
        resolve();
      });
    });
  }
  return git;
}
