/** The examples of the repository, read as the command line reads them. */
import { readFileSync } from 'node:fs';
import { type LoadedShelter, loadWorkspace } from '@tautline/language';
import { type Problem, resolveShelter, type Shelter } from '@tautline/shelter';

const folder = new URL('../../examples/', import.meta.url);

export interface Example {
  readonly shelter: Shelter;
  readonly loaded: LoadedShelter;
  readonly problems: readonly Problem[];
}

/** The first shelter of `examples/NAME.shelter`. */
export function example(name: string): Promise<Example> {
  const made =
    read.get(name) ?? fromText(readFileSync(new URL(`${name}.shelter`, folder), 'utf8'), `${name}.shelter`);
  read.set(name, made);
  return made;
}

/** Each example is read once a test file. */
const read = new Map<string, Promise<Example>>();

/** The first shelter of a text that stands beside the examples. Throws when there is none that can be built. */
export async function fromText(text: string, file = 'text.shelter'): Promise<Example> {
  const workspace = await loadWorkspace([{ uri: new URL(file, folder).href, text }], (uri) =>
    readFileSync(new URL(uri), 'utf8'),
  );
  const loaded = workspace.shelters[0];
  if (!loaded) throw new Error(`${file} holds no shelter: ${JSON.stringify(workspace.problems)}`);
  const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
  if (!shelter) throw new Error(`${file}: ${problems.map((one) => one.message).join('; ')}`);
  return { shelter, loaded, problems: [...problems] };
}
