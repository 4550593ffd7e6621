/**
 * Lenses that do not make the editor wait. It measures how long lenses take and waits as long before it asks again:
 * one answer that had to wait for the server to start would keep results out of sight for seconds.
 */
import type { CodeLens, TextDocument } from 'vscode';
import { type BaseLanguageClient, CodeLensRequest, type Middleware } from 'vscode-languageclient';

/** How long the server may take before the editor gets what was there before, ms. */
const patience = 150;

type Lenses = CodeLens[] | null | undefined;

const tooLate = Symbol('too late');

const after = (ms: number): Promise<typeof tooLate> =>
  new Promise((resolve) => {
    setTimeout(() => resolve(tooLate), ms);
  });

const same = (one: Lenses, other: Lenses): boolean => JSON.stringify(one) === JSON.stringify(other);

export function promptLenses(
  client: () => BaseLanguageClient | undefined,
): NonNullable<Middleware['provideCodeLenses']> {
  const shown = new Map<string, Lenses>();
  const askAgain = (document: TextDocument): void => {
    const feature = client()?.getFeature(CodeLensRequest.method);
    feature?.getProvider(document)?.onDidChangeCodeLensEmitter.fire();
  };
  return async (document, token, next) => {
    const key = document.uri.toString();
    const keep = (lenses: Lenses): Lenses => {
      shown.set(key, lenses);
      return lenses;
    };
    const { version } = document;
    const asked = Promise.resolve(next(document, token));
    const soon = await Promise.race([asked, after(patience)]);
    if (soon !== tooLate) return keep(soon);
    asked.then(
      (lenses) => {
        if (token.isCancellationRequested || document.version !== version || same(lenses, shown.get(key)))
          return;
        // Asked for anew, not handed over: the server may know more by now.
        keep(lenses);
        askAgain(document);
      },
      () => undefined,
    );
    return shown.get(key);
  };
}
