/** Answers when somebody asks for the whole house in space. */
import { messageText } from '@tautline/checks';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { reason } from '../analyst/reason.ts';
import { type WholeHouseAnswer, type WholeHouseQuestion, wholeHouseRequest } from '../protocol.ts';
import type { ServerServices } from './lsp-module.ts';
import { readyDocument } from './requests.ts';
import type { ShelterResult } from './results.ts';
import { systemFor } from './settings.ts';
import type { WholeHouses } from './whole-houses.ts';
import { workAsked } from './work-done.ts';

export function answerWholeHouse(
  connection: Connection,
  services: ServerServices,
  houses: WholeHouses,
): void {
  connection.onRequest(
    wholeHouseRequest,
    async (question: WholeHouseQuestion, token: CancellationToken): Promise<WholeHouseAnswer> => {
      const document = await readyDocument(services, question.uri);
      if (!document) return { done: false, told: 'The file is not open to the language server.' };
      const shown = workAsked(connection, question.workDoneToken, 'Checking the whole house');
      try {
        await houses.check(document, shown.tell, token);
      } catch (error) {
        const why = reason(error);
        return { done: false, told: `The whole house could not be worked out: ${why}.` };
      } finally {
        shown.end();
      }
      const analysis = services.analyses.of(question.uri);
      const known = analysis?.results.filter(({ whole }) => whole?.old === false) ?? [];
      if (known.length === 0)
        return {
          done: false,
          told: token.isCancellationRequested
            ? 'Stopped: nothing is known of the whole house.'
            : 'There is no shelter in this file that can be worked out as it is now.',
        };
      const system = systemFor(analysis?.world, services.context.settings());
      return { done: true, told: known.map((result) => told(result, system)).join(' ') };
    },
  );
}

/** The shelter in a sentence or two: whether it stands, and where the two ways of looking at it differ. */
function told({ shelter, whole }: ShelterResult, system: Parameters<typeof messageText>[1]): string {
  const findings = whole?.findings ?? [];
  const own = findings.filter(({ id }) => id === 'whole-house');
  const failing = own.filter(({ verdict }) => verdict === 'fails');
  const why = whole?.notChecked.find(({ id }) => id === 'whole-house')?.reason;
  const said = (failing.length > 0 ? failing : own.slice(0, 1)).map(({ message }) =>
    messageText(message, system),
  );
  const differing = findings.filter(({ id }) => id === 'tier-difference').length;
  return [
    `${shelter}:`,
    ...(said.length > 0 ? said : [`not worked out in space: ${why ?? 'no answer'}.`]),
    ...(differing === 0
      ? []
      : [`${differing} ${differing === 1 ? 'check differs' : 'checks differ'} from the typical frame.`]),
  ].join(' ');
}
