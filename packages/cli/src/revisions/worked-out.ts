/** Revisions loaded and worked out for a review: only what can differ is calculated. */
import { relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { checks } from '@tautline/checks';
import { type LoadedShelter, type LoadedWorkspace, loadWorkspace } from '@tautline/language';
import {
  type RenamedFiles,
  type Revision,
  type Written,
  withFigures,
  worthWorkingOut,
} from '@tautline/review';
import { resolveShelter } from '@tautline/shelter';
import { buyingOf } from '../buying.ts';
import type { CommandArguments } from '../commands/command.ts';
import type { Machine } from '../machine.ts';
import { runTasks } from '../threads/pool.ts';
import type { FiguresTask } from './figures.ts';
import type { TextFile } from './git.ts';

export interface ReadRevision {
  readonly label: string;
  readonly files: readonly TextFile[];
}

/** Both revisions read as if they lay in one folder, so that a moved checkout is no change. */
const root = pathToFileURL('/revision').href;

interface Loaded extends Written {
  readonly loaded: LoadedShelter;
  readonly workspace: LoadedWorkspace;
}

export async function workedOut(
  before: ReadRevision,
  after: ReadRevision,
  renamed: RenamedFiles,
  args: CommandArguments,
  on: string,
  machine: Machine,
): Promise<readonly [Revision, Revision]> {
  const old = await loadRevision(before);
  const now = await loadRevision(after);
  const needed = worthWorkingOut(old, now, renamed);
  const tasks: FiguresTask[] = [];
  for (const { name, world } of needed) {
    const { options } = await buyingOf(world, args);
    tasks.push({ type: 'figures', name, world, options, on });
  }
  const results = await runTasks(tasks, {
    machine,
    onDone: (done) => machine.progress(`Worked out ${done} of ${tasks.length} shelters`),
  });
  machine.progress('');
  const figures = new Map(needed.map((one, index) => [one, results[index] ?? {}] as const));
  return [
    { label: before.label, shelters: withFigures(old, errorsOf, figures) },
    { label: after.label, shelters: withFigures(now, errorsOf, figures) },
  ];
}

async function loadRevision({ files }: ReadRevision): Promise<Loaded[]> {
  const workspace = await loadWorkspace(
    files.map(({ path, text }) => ({
      uri: `${root}/${path.split('/').map(encodeURIComponent).join('/')}`,
      text,
    })),
    () => undefined,
    { roots: [root], checks: new Set(checks.map((check) => check.id)) },
  );
  return workspace.shelters.map((loaded) => ({
    name: loaded.name,
    file: pathOf(loaded.uri),
    kind: loaded.kind,
    world: loaded.world,
    loaded,
    workspace,
  }));
}

/** Errors of its own file, and of what it says. */
function errorsOf({ loaded, workspace }: Loaded): string[] {
  const inText = workspace.problems
    .filter((problem) => problem.severity === 'error' && problem.uri === loaded.uri)
    .map(({ uri, from, message }) => `${pathOf(uri)}:${from.line + 1}: ${message}`);
  const said = loaded.kind === 'range' ? [] : resolveShelter(loaded.name, loaded.world).problems;
  const inWords = said.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  return [...new Set([...inText, ...inWords])];
}

function pathOf(uri: string): string {
  return relative(fileURLToPath(root), fileURLToPath(uri)).split('\\').join('/');
}
