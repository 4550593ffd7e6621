/**
 * Keeps the results of all files up to date: a little after the last keystroke, newest edit first, the last
 * good results kept until there are better ones. Nothing here blocks the message loop.
 */
import type { SpecWorld } from '@tautline/shelter';
import { Cancellation, DocumentState, type LangiumDocument } from 'langium';
import type { AnalysisResult, Analyst } from '../analyst/analyst.ts';
import { isDefinition } from '../generated/ast.ts';
import { definitionsOf, type ViewServices, worldOf } from './file-view.ts';
import { closureOf, fileOf, isCatalogue } from './scope.ts';

/** Quiet time after an edit before its shelters are worked out, ms. */
const PAUSE = 10;

export interface FileAnalysis {
  readonly uri: string;
  /** Version of the text the results belong to. */
  readonly version: number;
  readonly world: SpecWorld;
  readonly results: readonly AnalysisResult[];
  /** The text has changed since. */
  readonly stale: boolean;
}

interface Pending {
  readonly timer: ReturnType<typeof setTimeout>;
  readonly source: Cancellation.CancellationTokenSource;
}

export class Analyses {
  private readonly byFile = new Map<string, FileAnalysis>();
  private readonly spoken = new Map<string, string>();
  private readonly pending = new Map<string, Pending>();
  private readonly listeners: ((analysis: FileAnalysis) => void)[] = [];
  private readonly services: ViewServices;
  private readonly analyst: Analyst;
  private readonly today: () => string | undefined;

  constructor(services: ViewServices, analyst: Analyst, today: () => string | undefined) {
    this.services = services;
    this.analyst = analyst;
    this.today = today;
  }

  of(uri: string): FileAnalysis | undefined {
    return this.byFile.get(uri);
  }

  onAnalysed(listener: (analysis: FileAnalysis) => void): void {
    this.listeners.push(listener);
  }

  /** Results worked out for the text as it is now, waiting for them if need be. */
  async current(document: LangiumDocument): Promise<FileAnalysis | undefined> {
    const uri = document.uri.toString();
    const known = this.byFile.get(uri);
    if (known && !known.stale && known.version === document.textDocument.version) return known;
    const pending = this.pending.get(uri);
    if (pending) clearTimeout(pending.timer);
    await this.run(document, pending?.source ?? new Cancellation.CancellationTokenSource());
    return this.byFile.get(uri);
  }

  /** A file or something it imports has changed. */
  changed(document: LangiumDocument): void {
    const uri = document.uri.toString();
    if (isCatalogue(document.uri)) return;
    const before = this.byFile.get(uri);
    if (before) this.byFile.set(uri, { ...before, stale: true });
    this.stop(uri);
    const source = new Cancellation.CancellationTokenSource();
    const timer = setTimeout(() => {
      this.run(document, source).catch((error: unknown) => console.error('Analysis failed:', error));
    }, PAUSE);
    this.pending.set(uri, { timer, source });
  }

  forget(uri: string): void {
    this.stop(uri);
    this.byFile.delete(uri);
    this.spoken.delete(uri);
  }

  dispose(): void {
    for (const uri of [...this.pending.keys()]) this.stop(uri);
    this.analyst.dispose();
  }

  private stop(uri: string): void {
    const pending = this.pending.get(uri);
    if (!pending) return;
    clearTimeout(pending.timer);
    pending.source.cancel();
    this.pending.delete(uri);
  }

  private async run(document: LangiumDocument, source: Cancellation.CancellationTokenSource): Promise<void> {
    const uri = document.uri.toString();
    const { version } = document.textDocument;
    // In the middle of being read anew: when that is done, this is called again.
    const near = closureOf(document, this.services.shared.workspace.LangiumDocuments, this.services.roots);
    if (near.some(({ state }) => state < DocumentState.Linked)) return;
    const names = shelterNames(document);
    const world = worldOf(document, this.services);
    const said = this.saidBy(document, names);
    const before = this.byFile.get(uri);
    if (before && this.spoken.get(uri) === said) {
      // Only comments or layout changed: the results stand.
      this.settle({ ...before, version, stale: false }, source);
      return;
    }
    const results: AnalysisResult[] = [];
    const on = this.today();
    for (const name of names) {
      const result = await this.analyst.analyse(world, name, on === undefined ? {} : { on }, source.token);
      if (!result || source.token.isCancellationRequested) return;
      results.push(result);
    }
    this.spoken.set(uri, said);
    this.settle({ uri, version, world, results, stale: false }, source);
  }

  private settle(analysis: FileAnalysis, source: Cancellation.CancellationTokenSource): void {
    this.byFile.set(analysis.uri, analysis);
    if (this.pending.get(analysis.uri)?.source === source) this.pending.delete(analysis.uri);
    for (const listener of this.listeners) listener(analysis);
  }

  /** Everything of the file and its imports that results depend on, as text. */
  private saidBy(document: LangiumDocument, names: readonly string[]): string {
    const near = closureOf(document, this.services.shared.workspace.LangiumDocuments, this.services.roots);
    return JSON.stringify([names, this.today(), near.map((one) => [one.uri.toString(), definitionsOf(one)])]);
  }
}

/** Shelters and variants of a file by name, in order. */
export function shelterNames(document: LangiumDocument): readonly string[] {
  return (fileOf(document)?.statements ?? []).flatMap((statement) =>
    isDefinition(statement) &&
    (statement.kind === 'shelter' || statement.kind === 'variant') &&
    statement.name !== undefined
      ? [statement.name]
      : [],
  );
}
