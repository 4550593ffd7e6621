/** Revisions loaded and worked out for a review: only what can differ is calculated. */
import { relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { checks, evaluate } from '@tautline/checks';
import { type LoadedShelter, type LoadedWorkspace, loadWorkspace } from '@tautline/language';
import {
  type Figures,
  firstFailureOf,
  type RenamedFiles,
  type Revision,
  workedOut as sides,
  type Written,
} from '@tautline/review';
import { resolveShelter } from '@tautline/shelter';
import { materialsExact } from '@tautline/takeoff';
import { buyingOf } from '../buying.ts';
import type { CommandArguments } from '../commands/command.ts';
import { loadSolver } from '../solver.ts';
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
): Promise<readonly [Revision, Revision]> {
  const old = await loadRevision(before);
  const now = await loadRevision(after);
  const [left, right] = await sides(old, now, renamed, errorsOf, (one) => figures(one, args, on));
  return [
    { label: before.label, shelters: left },
    { label: after.label, shelters: right },
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

async function figures({ loaded }: Loaded, args: CommandArguments, on: string): Promise<Figures> {
  const { shelter } = resolveShelter(loaded.name, loaded.world);
  if (shelter === undefined) return {};
  const evaluation = evaluate(shelter, { on });
  const firstFailure = firstFailureOf(evaluation);
  return {
    evaluation,
    materials: await materialsExact(shelter, loadSolver, (await buyingOf(loaded.world, args)).options),
    ...(firstFailure === undefined ? {} : { firstFailure }),
  };
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
