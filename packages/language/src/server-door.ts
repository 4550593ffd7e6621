/** Door for the language server: starts it on a connection, in a process or in a worker. */
import { DocumentState, URI } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { type EvaluatedNotice, evaluatedNotification, settingsSection } from './protocol.ts';
import { diagnosticsOf } from './services/diagnostics.ts';
import { statusOf } from './services/lenses.ts';
import { createServerServices, type ServerOptions, type ServerServices } from './services/lsp-module.ts';
import { selectionRanges } from './services/outline.ts';
import { registerRequests } from './services/requests.ts';
import { readSettings, shown, systemFor } from './services/settings.ts';
import type { Sheets } from './services/sheet-of.ts';
import { warmUp } from './services/warm-up.ts';
import { answerWholeHouse } from './services/whole-house-request.ts';
import { WholeHouses } from './services/whole-houses.ts';
import { workShown } from './services/work-done.ts';

// For requests of whoever bundles the server: it must not bring a second copy of the framework.
export { DocumentState, URI } from 'langium';
export { createInProcessAnalyst } from './analyst/analyst.ts';
export { countedFor } from './analyst/bill.ts';
export { createInPlaceWork, type Doing, type Job, type Jobs, type LongWork } from './analyst/long-work.ts';
export type { FromWorker, Port, ToWorker } from './analyst/messages.ts';
export { fromCatalogue, ownMark } from './analyst/messages.ts';
export type { ToldEvaluation } from './analyst/result.ts';
export { languageJobs } from './analyst/whole-house.ts';
export { createWorkerAnalyst } from './analyst/worker-analyst.ts';
export { serveAnalyst } from './analyst/worker-side.ts';
export { createWorkerWork, serveJobs } from './analyst/worker-work.ts';
export { applySpecEdits, editsByFile } from './edit/apply-spec-edits.ts';
export { loadWorkspace } from './load-workspace.ts';
export { textEdits } from './services/actions.ts';
export { knownProblems } from './services/diagnostics.ts';
export type { ServerOptions, ServerServices } from './services/lsp-module.ts';
export { shelterNames } from './services/named.ts';
export { inside, readyDocument } from './services/requests.ts';
export { beforeEdits } from './services/results.ts';
export { systemFor } from './services/settings.ts';
export type { Drawn, Sheets } from './services/sheet-of.ts';
export { workAsked } from './services/work-done.ts';

/** Starts the language server on a connection, and gives back its services. */
export function startServer(
  connection: Connection,
  options: ServerOptions & { readonly sheets?: Sheets },
): ServerServices {
  const today = (): string => new Date().toISOString().slice(0, 10);
  const services = createServerServices(connection, { today, ...options });
  const { shared, context, analyses } = services;
  const { DocumentBuilder, LangiumDocuments, TextDocuments } = shared.workspace;
  const can = { configuration: false, hints: false, lenses: false, progress: false };

  shared.lsp.LanguageServer.onInitialize(({ capabilities }) => {
    can.configuration = capabilities.workspace?.configuration === true;
    can.hints = capabilities.workspace?.inlayHint?.refreshSupport === true;
    can.lenses = capabilities.workspace?.codeLens?.refreshSupport === true;
    can.progress = capabilities.window?.workDoneProgress === true;
  });
  const houses = new WholeHouses({
    analyses,
    work: services.longWork,
    today: () => options.today?.() ?? today(),
    settings: context.settings,
    documentAt: (uri) => (TextDocuments.get(uri) ? LangiumDocuments.getDocument(uri) : undefined),
    show: (title) => workShown(connection, can.progress, title),
  });
  const refresh = (): void => {
    if (can.hints) connection.languages.inlayHint.refresh().catch(() => undefined);
    if (can.lenses) connection.sendRequest('workspace/codeLens/refresh').catch(() => undefined);
  };
  const show = (uri: string): void => {
    const document = LangiumDocuments.getDocument(URI.parse(uri));
    if (!document || document.state < DocumentState.Validated) return;
    document.diagnostics = diagnosticsOf(document, context);
    connection.sendDiagnostics({ uri, diagnostics: document.diagnostics }).catch(() => undefined);
  };
  const use = (sent: unknown): void => {
    services.setSettings(readSettings(sent));
    for (const { uri } of LangiumDocuments.all) show(uri.toString());
    refresh();
  };
  shared.lsp.LanguageServer.onInitialized(() => {
    if (can.configuration) connection.workspace.getConfiguration(settingsSection).then(use, () => undefined);
    // In place there is nothing to warm: the calculation would only stand in the way of the first file.
    if (options.warm === true)
      warmUp(context.view, services.analyst, options.sheets ?? {}).catch(() => undefined);
  });
  shared.workspace.ConfigurationProvider.onConfigurationSectionUpdate(({ section, configuration }) => {
    if (section === settingsSection) use(configuration);
  });

  const forget = (uri: string): void => {
    analyses.forget(uri);
    houses.forget(uri);
  };
  // Linked is enough: the worker calculates while the text is being checked here.
  DocumentBuilder.onBuildPhase(DocumentState.Linked, (documents) => {
    for (const document of documents) if (TextDocuments.get(document.uri)) analyses.changed(document);
  });
  DocumentBuilder.onUpdate((_changed, deleted) => {
    for (const uri of deleted) forget(uri.toString());
  });
  TextDocuments.onDidClose(({ document }) => forget(document.uri));
  TextDocuments.onDidSave(({ document }) => houses.saved(document.uri));
  analyses.onAnalysed((analysis) => {
    show(analysis.uri);
    refresh();
    const settings = context.settings();
    const system = systemFor(analysis.world, settings);
    const speed = (si: number): string => shown(si, 'speed', system, settings);
    const summary = analysis.results
      .map((result) => `${result.shelter}: ${statusOf(result, speed)}`)
      .join('; ');
    const { results } = analysis;
    const whole = results.length > 0 && results.every((result) => result.whole?.old === false);
    const tier = whole ? 'full' : 'live';
    const notice: EvaluatedNotice = { uri: analysis.uri, version: analysis.version, tier, summary };
    connection.sendNotification(evaluatedNotification, notice).catch(() => undefined);
  });
  registerRequests(connection, services, options.sheets ?? {});
  answerWholeHouse(connection, services, houses);
  connection.onSelectionRanges(({ textDocument, positions }) => {
    const document = LangiumDocuments.getDocument(URI.parse(textDocument.uri));
    return document ? selectionRanges(document, positions) : [];
  });
  connection.onShutdown(() => {
    houses.dispose();
    analyses.dispose();
  });
  startLanguageServer(shared);
  return services;
}
