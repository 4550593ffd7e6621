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

/** An answer that came too late, kept for when the editor asks again. */
interface Late {
  readonly version: number;
  readonly lenses: Lenses;
}

export function promptLenses(
  client: () => BaseLanguageClient | undefined,
): NonNullable<Middleware['provideCodeLenses']> {
  const shown = new Map<string, Lenses>();
  const late = new Map<string, Late>();
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
    const came = late.get(key);
    late.delete(key);
    if (came?.version === version) return keep(came.lenses);
    const asked = Promise.resolve(next(document, token));
    const soon = await Promise.race([asked, after(patience)]);
    if (soon !== tooLate) return keep(soon);
    asked.then(
      (lenses) => {
        if (token.isCancellationRequested || document.version !== version) return;
        late.set(key, { version, lenses });
        askAgain(document);
      },
      () => undefined,
    );
    return shown.get(key);
  };
}
