import type { LongQuestion } from '@tautline/language/protocol';
import { type CancellationToken, ProgressLocation, window } from 'vscode';
import { type BaseLanguageClient, WorkDoneProgress } from 'vscode-languageclient';

let asked = 0;

/**
 * Asks the server what takes seconds: with its progress shown, and a button that stops it. Resolves with the answer,
 * or with undefined when it was stopped.
 */
export function askLong<Q extends LongQuestion, A>(
  client: BaseLanguageClient,
  title: string,
  request: string,
  question: Q,
): Promise<A | undefined> {
  asked += 1;
  const workDoneToken = `tautline-${asked}`;
  const location = { location: ProgressLocation.Notification, title, cancellable: true };
  const shown = window.withProgress(location, async (progress, token: CancellationToken) => {
    let told = 0;
    const heard = client.onProgress(WorkDoneProgress.type, workDoneToken, (value) => {
      if (value.kind !== 'report') return;
      const share = value.percentage ?? told;
      const { message } = value;
      progress.report({
        increment: Math.max(0, share - told),
        ...(message === undefined ? {} : { message }),
      });
      told = Math.max(told, share);
    });
    try {
      return await client.sendRequest<A>(request, { ...question, workDoneToken }, token);
    } catch (error) {
      if (token.isCancellationRequested) return undefined;
      throw error;
    } finally {
      heard.dispose();
    }
  });
  return Promise.resolve(shown);
}
