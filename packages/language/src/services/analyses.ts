/**
 * Keeps the results of all files up to date: from the moment a text is linked, newest edit first, the last
 * good results kept until there are better ones. Nothing here blocks the message loop.
 */
import type { AtGust, Finding } from '@tautline/checks';
import type { SpecWorld } from '@tautline/shelter';
import { Cancellation, DocumentState, type LangiumDocument } from 'langium';
import type { Analyst } from '../analyst/analyst.ts';
import { bearingButForAmounts, bearingOn } from '../analyst/bearing.ts';
import { numbersOf, ownOf } from '../analyst/messages.ts';
import type { AnalysisOptions, AnalysisResult, ToldEvaluation } from '../analyst/result.ts';
import type { Span } from '../spec/origin-key.ts';
import { type ViewServices, worldOf } from './file-view.ts';
import { mayHideNames, membersOf, nameSpan, shelterNames, withResults } from './named.ts';
import {
  allOf,
  type FileAnalysis,
  hidden,
  joined,
  joinedRange,
  type RangeMember,
  type RangeResult,
  type Seen,
  type ShelterResult,
  stands,
  type WorkedFrom,
} from './results.ts';
import { closureOf, isCatalogue } from './scope.ts';
import { moved, type Written, writtenNow } from './written.ts';

/** Quiet time after an edit before the order of failure is worked out, ms: it takes longer than a keystroke. */
const PAUSE = 300;

interface Pending {
  readonly timer?: ReturnType<typeof setTimeout>;
  readonly running?: Promise<void>;
  readonly source: Cancellation.CancellationTokenSource;
}

/** What the results of a file are worked out from. */
interface Asked {
  readonly world: SpecWorld;
  readonly written: Written;
  readonly before: FileAnalysis | undefined;
  readonly token: Cancellation.CancellationToken;
}

type Coming = Promise<ShelterResult | RangeResult | undefined>;

/** What is being worked out for a text, each by its name. */
interface AtWork {
  readonly version: number;
  readonly world: SpecWorld;
  readonly results: ReadonlyMap<string, Coming>;
}

type Listener = (analysis: FileAnalysis) => void;

export class Analyses {
  private readonly byFile = new Map<string, FileAnalysis>();
  private readonly spoken = new Map<string, string>();
  private readonly pending = new Map<string, Pending>();
  private readonly atWork = new Map<string, AtWork>();
  private readonly listeners: Listener[] = [];
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

  onAnalysed(listener: Listener): void {
    this.listeners.push(listener);
  }

  /** What the results of a file were worked out from, as text: the same text, the same results. */
  saidOf(uri: string): string | undefined {
    return this.spoken.get(uri);
  }

  /** Changes results of a file that still says what it said; false when it does not. */
  improve(uri: string, said: string | undefined, change: (result: ShelterResult) => ShelterResult): boolean {
    const settled = this.byFile.get(uri);
    if (!settled || this.spoken.get(uri) !== said) return false;
    const analysis = { ...settled, results: settled.results.map(change) };
    this.byFile.set(uri, analysis);
    for (const listener of this.listeners) listener(analysis);
    return true;
  }

  /** Results worked out for the text as it is now, with its prices, waiting for them if need be. */
  async current(document: LangiumDocument): Promise<FileAnalysis | undefined> {
    const analysis = await this.found(document);
    if (!analysis) return undefined;
    const [results, ranges] = await Promise.all([
      Promise.all(analysis.results.map((one) => this.withPrices(one))),
      Promise.all(analysis.ranges.map((one) => this.withPrices(one))),
    ]);
    const now = { ...analysis, results, ranges };
    // Kept, so that it is done once for each edit.
    if (this.byFile.get(analysis.uri) === analysis) this.byFile.set(analysis.uri, now);
    return now;
  }

  private async found(document: LangiumDocument): Promise<FileAnalysis | undefined> {
    const uri = document.uri.toString();
    const known = this.byFile.get(uri);
    if (known && !known.stale && known.version === document.textDocument.version) return known;
    const pending = this.pending.get(uri);
    if (pending?.running) await pending.running;
    const now = this.byFile.get(uri);
    if (now && !now.stale && now.version === document.textDocument.version) return now;
    await this.run(document, pending?.source ?? new Cancellation.CancellationTokenSource());
    return this.byFile.get(uri);
  }

  /** One of a file's shelters or ranges as the text is now, as soon as it is worked out, be the others or not. */
  async one(document: LangiumDocument, name: string): Promise<Seen | undefined> {
    const atWork = this.atWork.get(document.uri.toString());
    if (atWork?.version === document.textDocument.version) {
      const result = await atWork.results.get(name);
      if (result) return { world: atWork.world, stale: false, all: [await this.withPrices(result)] };
    }
    const analysis = await this.current(document);
    if (!analysis) return undefined;
    const seen = allOf(analysis);
    return { ...seen, all: seen.all.filter(({ shelter }) => shelter === name) };
  }

  /** The evaluation of one shelter with the frame analysis in it, for drawings of what happens under load. */
  async withFrame(analysis: FileAnalysis, result: ShelterResult): Promise<ToldEvaluation | undefined> {
    const { evaluation, kept, shelter } = result;
    if (!evaluation || kept || evaluation.analysis) return evaluation;
    const whole = await this.analyst.analyse(analysis.world, shelter, this.options({ frame: true }));
    const frame = whole?.evaluation?.analysis;
    return frame ? { ...evaluation, analysis: frame } : evaluation;
  }

  /** The findings of a shelter or range with their calculations, as they were worked out from its text. */
  async calculated({ world, shelter, ...result }: ShelterResult | RangeResult): Promise<readonly Finding[]> {
    const answer = await this.analyst.analyse(world, shelter, this.options({ steps: true }));
    const { whole }: Partial<ShelterResult> = result;
    return [...(answer?.calculated ?? []), ...(whole?.findings ?? [])];
  }

  /** One shelter at a gust (m/s); undefined when it was taken back, or when its frame is not calculated. */
  async atGust(
    { world }: FileAnalysis,
    shelter: string,
    gust: number,
    token: Cancellation.CancellationToken,
  ): Promise<AtGust | undefined> {
    return (await this.analyst.analyse(world, shelter, this.options({ gust }), token))?.atGust;
  }

  /** A file or something it imports has changed and is linked anew: the work on it begins at once. */
  changed(document: LangiumDocument): void {
    const uri = document.uri.toString();
    if (isCatalogue(document.uri)) return;
    const before = this.byFile.get(uri);
    if (before) this.byFile.set(uri, { ...before, stale: true });
    this.stop(uri);
    const source = new Cancellation.CancellationTokenSource();
    const running = this.run(document, source).catch((error: unknown) => this.report(error));
    this.pending.set(uri, { source, running });
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

  private options(more: AnalysisOptions = {}): AnalysisOptions {
    const on = this.today();
    return on === undefined ? more : { ...more, on };
  }

  private report(error: unknown): void {
    console.error('Analysis failed:', error);
  }

  private stop(uri: string): void {
    this.atWork.delete(uri);
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
    const written = writtenNow(document);
    if (!written || near.some(({ state }) => state < DocumentState.Linked)) return;
    const names = shelterNames(document);
    const world = worldOf(document, this.services);
    const said = this.saidBy(world, document);
    const before = this.byFile.get(uri);
    const lost = before && mayHideNames(document) ? before : undefined;
    const places = placesOf(document, lost);
    if (before && this.spoken.get(uri) === said) {
      // Only comments or layout changed: the results stand.
      const anew = <T extends { readonly kept: boolean }>(all: readonly T[]): readonly T[] =>
        all.map((one) => (one.kept ? one : { ...one, written }));
      const [results, ranges] = [anew(before.results), anew(before.ranges)];
      this.settle({ ...before, version, written, results, ranges, places, stale: false }, document, source);
      return;
    }
    const asked: Asked = { world, written, before, token: source.token };
    // All at once: the worker goes from one to the next, in this order.
    const results = new Map(names.map((name) => [name, this.result(name, asked)]));
    const ranges = new Map(
      shelterNames(document, ['range']).map((name) => [name, this.range(name, names, asked)]),
    );
    this.atWork.set(uri, { version, world, results: new Map<string, Coming>([...results, ...ranges]) });
    const worked = await Promise.all([Promise.all(results.values()), Promise.all(ranges.values())]);
    const [resulted, ranged] = [whole(worked[0]), whole(worked[1])];
    if (!resulted || !ranged || source.token.isCancellationRequested) return;
    this.spoken.set(uri, said);
    const named = shelterNames(document, withResults);
    const now = {
      ...{ uri, version, written, world, places, stale: false },
      results: [...resulted, ...(lost ? hidden(lost.results, named) : [])],
      ranges: [...ranged, ...(lost ? hidden(lost.ranges, named) : [])],
    };
    this.settle(now, document, source);
  }

  /** The result of one shelter: that of before where nothing that bears on it has changed. */
  private async result(name: string, asked: Asked): Promise<ShelterResult | undefined> {
    const { world, written, before } = asked;
    const now = this.workedFrom(name, asked);
    const earlier = before?.results.find(({ shelter }) => shelter === name);
    if (earlier && stands(earlier, now.said)) return { ...earlier, written, world };
    const fresh = await this.analyse(name, asked);
    return fresh && joined(fresh, earlier, now);
  }

  private async range(name: string, here: readonly string[], asked: Asked): Promise<RangeResult | undefined> {
    const { world, written, before } = asked;
    const now = this.workedFrom(name, asked);
    const earlier = before?.ranges.find(({ shelter }) => shelter === name);
    if (earlier && stands(earlier, now.said)) return { ...earlier, written, world };
    const members = membersOf(name, world);
    const elsewhere = members.filter(({ shelter }) => !here.includes(shelter));
    const [fresh, ...others] = await Promise.all([
      this.analyse(name, asked),
      ...elsewhere.map(({ shelter }) => this.analyse(shelter, asked)),
    ]);
    const guests = elsewhere.flatMap((member, at): RangeMember[] => {
      const result = others[at];
      return result ? [{ ...member, result }] : [];
    });
    return fresh && { ...joinedRange(fresh, earlier, now), members, guests };
  }

  private analyse(name: string, { world, token }: Asked): Promise<AnalysisResult | undefined> {
    return this.analyst.analyse(world, name, this.options(), token);
  }

  private workedFrom(name: string, { world, written }: Asked): WorkedFrom {
    const said = `${this.today()}\n${bearingButForAmounts(name, world)}`;
    return { world, written, said, pricedBy: world };
  }

  /** What was found before an amount was typed over stands; the prices in it do not. */
  private async withPrices<T extends ShelterResult | RangeResult>(result: T): Promise<T> {
    const { kept, world, pricedBy, shelter, evaluation, judged } = result;
    if (kept || world === pricedBy || bearingOn(shelter, world) === bearingOn(shelter, pricedBy))
      return result;
    const fresh = await this.analyst.analyse(world, shelter, this.options());
    if (evaluation && fresh?.evaluation)
      return { ...result, pricedBy: world, evaluation: { ...evaluation, shelter: fresh.evaluation.shelter } };
    if (judged && fresh?.judged)
      return { ...result, pricedBy: world, judged: { ...judged, range: fresh.judged.range } };
    return result;
  }

  private settle(
    analysis: FileAnalysis,
    document: LangiumDocument,
    source: Cancellation.CancellationTokenSource,
  ): void {
    const { uri, results } = analysis;
    this.byFile.set(uri, analysis);
    this.atWork.delete(uri);
    const pending = this.pending.get(uri);
    if (pending?.source === source) this.pending.delete(uri);
    const lacking = results.some(({ evaluation, gustsOld }) => evaluation && (gustsOld || !evaluation.gusts));
    if (lacking && !this.pending.has(uri)) {
      const timer = setTimeout(() => {
        this.rank(document, source).catch((error: unknown) => this.report(error));
      }, PAUSE);
      this.pending.set(uri, { timer, source });
    }
    for (const listener of this.listeners) listener(analysis);
  }

  /** Adds the order of failure to results that stand. */
  private async rank(document: LangiumDocument, source: Cancellation.CancellationTokenSource): Promise<void> {
    const uri = document.uri.toString();
    const settled = this.byFile.get(uri);
    if (!settled) return;
    const said = this.spoken.get(uri);
    const ranked = new Map<string, ToldEvaluation>();
    for (const { evaluation, kept, gustsOld, shelter } of settled.results) {
      if (!evaluation || kept || (evaluation.gusts && !gustsOld)) continue;
      const options = this.options({ gusts: true });
      const answer = await this.analyst.analyse(settled.world, shelter, options, source.token);
      if (!answer || source.token.isCancellationRequested) return;
      if (answer.evaluation) ranked.set(shelter, answer.evaluation);
    }
    if (this.byFile.get(uri)?.stale !== false) return;
    if (this.pending.get(uri)?.source === source) this.pending.delete(uri);
    this.improve(uri, said, (result) => {
      const evaluation = ranked.get(result.shelter);
      if (!result.evaluation || !evaluation) return result;
      const { awaited: _old, ...rest } = result;
      return { ...rest, evaluation, gustsOld: false };
    });
  }

  /** Everything results depend on, as text. */
  private saidBy(world: SpecWorld, document: LangiumDocument): string {
    return `${JSON.stringify([shelterNames(document, withResults), this.today()])}\n${numbersOf(world, ownOf(world))}`;
  }
}

/** Undefined where one of them was taken back. */
const whole = <T>(all: readonly (T | undefined)[]): readonly T[] | undefined => {
  const there = all.filter((one) => one !== undefined);
  return there.length < all.length ? undefined : there;
};

/** Where names stand, and where those last stood that a half-typed text has lost. */
function placesOf(document: LangiumDocument, lost: FileAnalysis | undefined): ReadonlyMap<string, Span> {
  const text = document.textDocument.getText();
  const last = [...(lost?.places ?? [])].map(([name, at]) => [name, moved(at, lost!.written, text)] as const);
  const now = shelterNames(document, withResults).map((name) => [name, nameSpan(document, name)] as const);
  return new Map([...last, ...now]);
}
