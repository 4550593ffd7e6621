/** Answers what changed in a file's shelters since the last commit: both texts worked out and compared. */
import {
  type ChangesAnswer,
  type ChangesQuestion,
  type CommittedAnswer,
  changesRequest,
  committedRequest,
} from '@tautline/language/protocol';
import {
  fromCatalogue,
  knownProblems,
  loadWorkspace,
  readyDocument,
  type ServerServices,
  shelterNames,
  workAsked,
} from '@tautline/language/server';
import type { SpecWorld } from '@tautline/shelter';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { fileName } from './explore-request.ts';
import { type ReviewInput, type ReviewSide, reviewJob } from './review-job.ts';

export function registerChanges(connection: Connection, services: ServerServices): void {
  connection.onRequest(
    changesRequest,
    async (question: ChangesQuestion, token: CancellationToken): Promise<ChangesAnswer> => {
      const shown = workAsked(connection, question.workDoneToken, 'Comparing with the last commit');
      try {
        return await changes(question.uri, token, shown.tell, connection, services);
      } catch (error) {
        return { why: `It could not be compared: ${error instanceof Error ? error.message : error}.` };
      } finally {
        shown.end();
      }
    },
  );
}

async function changes(
  uri: string,
  token: CancellationToken,
  progress: (share: number, next: string) => void,
  connection: Connection,
  services: ServerServices,
): Promise<ChangesAnswer> {
  const document = await readyDocument(services, uri);
  const analysis = document && (await services.analyses.current(document));
  if (!document || !analysis) return { why: 'The file is not open to the language server.' };
  const committed = (of: string): Promise<CommittedAnswer> =>
    connection.sendRequest(committedRequest, { uri: of });
  const last = await committed(uri);
  if ('why' in last) return last;
  const after: ReviewSide = {
    label: 'the text as it is',
    shelters: words.flatMap((kind) =>
      shelterNames(document, [kind]).map((name) => ({ name, kind, file: fileName(uri) })),
    ),
    problems: knownProblems(document, services.context)
      .filter(({ severity }) => severity === 'error')
      .map(({ message }) => message),
  };
  const earlier = await earlierOf(uri, last.text, last.commit, analysis.world, services, async (of) => {
    const answer = await committed(of);
    return 'text' in answer ? answer.text : undefined;
  });
  const { units } = services.context.settings();
  const on = services.context.today();
  const input: ReviewInput = {
    before: earlier.side,
    after,
    ...(units === 'metric' || units === 'us' ? { system: units } : {}),
    ...(on === undefined ? {} : { on }),
  };
  const worlds = [earlier.world, analysis.world];
  const page = await services.longWork.run<string>(reviewJob, worlds, input, { token, progress });
  return page === undefined
    ? { why: 'Stopped before it was done.' }
    : { title: `${fileName(uri)}: since the last commit`, page };
}

const words = ['shelter', 'variant', 'range'] as const;

/**
 * The file as it was, with what it imported then. Read without the catalogue, which is the same before and after:
 * its definitions are laid under, and words that name its items are no problems.
 */
async function earlierOf(
  uri: string,
  text: string | undefined,
  label: string,
  now: SpecWorld,
  { context }: ServerServices,
  readImport: (uri: string) => Promise<string | undefined>,
): Promise<{ readonly side: ReviewSide; readonly world: SpecWorld }> {
  const { folders } = context.view.roots;
  const loaded = await loadWorkspace(text === undefined ? [] : [{ uri, text }], readImport, {
    roots: folders,
    catalogue: [],
  });
  const world = loaded.worldOf(uri) ?? { definitions: new Map() };
  const definitions = new Map(world.definitions);
  for (const [name, one] of now.definitions)
    if (fromCatalogue(one.origin) && !definitions.has(name)) definitions.set(name, one);
  const unread = ['unreadable', 'unclosed', 'stray-brace', 'character', 'syntax', 'import'];
  return {
    world: { ...world, definitions },
    side: {
      label,
      shelters: loaded.shelters.map(({ name, kind }) => ({ name, kind, file: fileName(uri) })),
      problems: loaded.problems.filter(({ id }) => unread.includes(id)).map(({ message }) => message),
    },
  };
}
