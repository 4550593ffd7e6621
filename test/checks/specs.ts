/** The good and bad specs beside the checks' explanations, read from their folder. */
import { readdirSync, readFileSync } from 'node:fs';
import { type EvaluateOptions, type Evaluation, evaluate, evaluateRange } from '@tautline/checks';
import { type LoadedShelter, type LoadedWorkspace, loadWorkspace } from '@tautline/language';
import { resolveRange, resolveShelter } from '@tautline/shelter';

const folder = new URL('../../packages/checks/specs/', import.meta.url);

/** Every spec, loaded at once; each stands for itself. */
export function loadSpecs(): Promise<LoadedWorkspace> {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.shelter'))
    .map((name) => ({ uri: new URL(name, folder).href, text: readFileSync(new URL(name, folder), 'utf8') }));
  return loadWorkspace(files);
}

/** The one shelter of one of them, e.g. 'rot.bad'. */
export function shelterOf(workspace: LoadedWorkspace, name: string): LoadedShelter {
  const { href } = new URL(`${name}.shelter`, folder);
  const shelters = workspace.shelters.filter(({ uri, kind }) => uri === href && kind !== 'range');
  const [loaded] = shelters;
  if (loaded === undefined || shelters.length > 1) throw new Error(`${name} is not a spec of one shelter`);
  return loaded;
}

/** The verdict on the shelter of one of them; throws with the problems when it says something wrong. */
export function judgeSpec(workspace: LoadedWorkspace, name: string, options: EvaluateOptions): Evaluation {
  const loaded = shelterOf(workspace, name);
  const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
  const wrong = [...workspace.problems.filter(({ uri }) => uri === loaded.uri), ...problems];
  const errors = wrong.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  if (shelter === undefined || errors.length > 0) throw new Error(`${name}: ${errors.join('\n')}`);
  const evaluation = evaluate(shelter, options);
  // Where the spec is about shelters side by side, what is said of them counts as well.
  const besides = workspace.shelters
    .filter(({ uri, kind }) => uri === loaded.uri && kind === 'range')
    .flatMap(({ name: range, world }) => resolveRange(range, world).range ?? [])
    .flatMap((range) => evaluateRange(range).findings);
  return { ...evaluation, findings: [...evaluation.findings, ...besides] };
}

/** Ids of the checks that fail, each once. */
export function failedIn(evaluation: Evaluation): string[] {
  const failed = evaluation.findings.filter(({ verdict }) => verdict === 'fails').map(({ id }) => id);
  return [...new Set(failed)].sort();
}
