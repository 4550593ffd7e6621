import type { CommittedAnswer } from '@tautline/language/protocol';
import { type Event, extensions, Uri } from 'vscode';

/** What is used of the editor's own git extension, version 1 of its interface. */
interface Git {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: Event<'uninitialized' | 'initialized'>;
  getRepository(uri: Uri): Repository | null;
  openRepository?(root: Uri): Promise<Repository | null>;
}
interface Repository {
  readonly state: { readonly HEAD: { readonly commit?: string } | undefined };
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
    // The commit is there: it has no such file.
    return { commit: label };
  }
}

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
