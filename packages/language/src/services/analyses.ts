/**
 * Keeps the results of all files up to date: from the moment a text is linked, newest edit first, the last
 * good results kept until there are better ones. Nothing here blocks the message loop.
 */
import type { AtGust, Evaluation, Finding } from '@tautline/checks';
import type { Assumed, SpecWorld } from '@tautline/shelter';
import { Cancellation, DocumentState, type LangiumDocument } from 'langium';
import type { Analyst } from '../analyst/analyst.ts';
import { ownText } from '../analyst/messages.ts';
import type { AnalysisOptions, AnalysisResult } from '../analyst/result.ts';
import type { WholeHouse } from '../analyst/whole-house.ts';
import type { Span } from '../spec/origin-key.ts';
import { type ViewServices, worldOf } from './file-view.ts';
import { membersOf, type NamedMember, nameSpan, shelterNames } from './named.ts';
import { closureOf, isCatalogue } from './scope.ts';
import { type Written, writtenNow } from './written.ts';

/** Quiet time after an edit before the order of failure is worked out, ms: it takes longer than a keystroke. */
const PAUSE = 300;

/** Words of what has results. */
const withResults = ['shelter', 'variant', 'range'];

export interface ShelterResult extends AnalysisResult {
  /** The text the evaluation was worked out from. */
  readonly written: Written;
  /** The text as it is now cannot be worked out; the evaluation is that of the last text that could. */
  readonly kept: boolean;
  /** The first-failure gusts are those of an earlier text; new ones are on their way. */
  readonly gustsOld: boolean;
  /** What was found by the gusts of an earlier text, until what is found by those of this one is there. */
  readonly awaited?: readonly Finding[];
  /** What the whole house in space adds, where it was worked out; `old` when the text has said other things since. */
  readonly whole?: WholeHouse & { readonly old: boolean };
}

/** Findings of the typical frame and what the whole house adds to them; or those of a range. */
export const findingsOf = ({
  evaluation,
  judged,
  awaited,
  whole,
}: Partial<ShelterResult>): readonly Finding[] => [
  ...(evaluation?.findings ?? judged?.verdict.findings ?? []),
  ...(awaited ?? []),
  ...(whole?.findings ?? []),
];

/** What is found of the shelters of a range that are defined elsewhere, said where the range puts them up. */
export const guestFindings = ({ guests }: RangeResult): readonly (Finding & { readonly shelter: string })[] =>
  guests.flatMap(({ origin, shelter, result }) =>
    findingsOf(result).map((one) => ({ ...one, shelter, origin, message: [`${shelter}: `, ...one.message] })),
  );

/** What was taken for a shelter, or for a range itself. */
export const assumedIn = ({ evaluation, judged }: AnalysisResult): readonly Assumed[] =>
  evaluation?.assumed ?? judged?.verdict.assumed ?? [];

/** A shelter that stands in a range and is not defined in the same file. */
export interface RangeMember extends NamedMember {
  readonly result: AnalysisResult;
}

/** `shelter` is the name of the range. */
export interface RangeResult extends AnalysisResult {
  /** The text the verdict was worked out from. */
  readonly written: Written;
  /** The range as it is now cannot be resolved; the verdict is that of the last text that could. */
  readonly kept: boolean;
  readonly members: readonly NamedMember[];
  readonly guests: readonly RangeMember[];
}

export interface FileAnalysis {
  readonly uri: string;
  /** Version of the text the results belong to. */
  readonly version: number;
  readonly written: Written;
  readonly world: SpecWorld;
  readonly results: readonly ShelterResult[];
  readonly ranges: readonly RangeResult[];
  /** Where the names of its shelters and ranges stood in that text. */
  readonly places: ReadonlyMap<string, Span>;
  /** The text has changed since. */
  readonly stale: boolean;
}

interface Pending {
  readonly timer?: ReturnType<typeof setTimeout>;
  readonly running?: Promise<void>;
  readonly source: Cancellation.CancellationTokenSource;
}

type Listener = (analysis: FileAnalysis) => void;

export class Analyses {
  private readonly byFile = new Map<string, FileAnalysis>();
  private readonly spoken = new Map<string, string>();
  private readonly pending = new Map<string, Pending>();
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

  /** Results worked out for the text as it is now, waiting for them if need be. */
  async current(document: LangiumDocument): Promise<FileAnalysis | undefined> {
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

  /** The evaluation of one shelter with the frame analysis in it, for drawings of what happens under load. */
  async withFrame(analysis: FileAnalysis, result: ShelterResult): Promise<Evaluation | undefined> {
    const { evaluation, kept, shelter } = result;
    if (!evaluation || kept || evaluation.analysis) return evaluation;
    const whole = await this.analyst.analyse(analysis.world, shelter, this.options({ frame: true }));
    const frame = whole?.evaluation?.analysis;
    return frame ? { ...evaluation, analysis: frame } : evaluation;
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
    const places = placesOf(document);
    const before = this.byFile.get(uri);
    if (before && this.spoken.get(uri) === said) {
      // Only comments or layout changed: the results stand.
      const moved = <T extends { readonly kept: boolean }>(all: readonly T[]): readonly T[] =>
        all.map((one) => (one.kept ? one : { ...one, written }));
      const [results, ranges] = [moved(before.results), moved(before.ranges)];
      this.settle({ ...before, version, written, results, ranges, places, stale: false }, document, source);
      return;
    }
    const results: ShelterResult[] = [];
    const work = (name: string) => this.analyst.analyse(world, name, this.options(), source.token);
    for (const name of names) {
      const result = await work(name);
      if (!result || source.token.isCancellationRequested) return;
      results.push(
        joined(
          result,
          before?.results.find(({ shelter }) => shelter === name),
          written,
        ),
      );
    }
    const ranges: RangeResult[] = [];
    for (const range of shelterNames(document, ['range'])) {
      const own = await work(range);
      const members = membersOf(range, world);
      const guests: RangeMember[] = [];
      for (const member of members.filter(({ shelter }) => !names.includes(shelter))) {
        const result = await work(member.shelter);
        if (result) guests.push({ ...member, result });
      }
      if (!own || source.token.isCancellationRequested) return;
      const earlier = before?.ranges.find(({ shelter }) => shelter === range);
      ranges.push({ ...joinedRange(own, earlier, written), members, guests });
    }
    this.spoken.set(uri, said);
    this.settle({ uri, version, written, world, results, ranges, places, stale: false }, document, source);
  }

  private settle(
    analysis: FileAnalysis,
    document: LangiumDocument,
    source: Cancellation.CancellationTokenSource,
  ): void {
    const { uri, results } = analysis;
    this.byFile.set(uri, analysis);
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
    const ranked = new Map<string, Evaluation>();
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
    return `${JSON.stringify([shelterNames(document, withResults), this.today()])}\n${ownText(world)}`;
  }
}

const placesOf = (document: LangiumDocument): ReadonlyMap<string, Span> =>
  new Map(shelterNames(document, withResults).map((name) => [name, nameSpan(document, name)]));

/** A new result beside the one before it: what it lacks is kept until it is there. */
function joined(fresh: AnalysisResult, before: ShelterResult | undefined, written: Written): ShelterResult {
  const { evaluation } = fresh;
  const old = before?.evaluation;
  const whole = before?.whole ? { whole: { ...before.whole, old: true } } : {};
  if (!evaluation) {
    const kept = old !== undefined && fresh.failure === undefined;
    if (!kept || !before) return { ...fresh, written, kept: false, gustsOld: false };
    const { bill, moments, awaited } = before;
    return {
      ...fresh,
      evaluation: old,
      ...(bill ? { bill } : {}),
      ...(moments ? { moments } : {}),
      ...(awaited ? { awaited } : {}),
      ...whole,
      written: before.written,
      kept,
      gustsOld: before.gustsOld,
    };
  }
  const found = [...(old?.findings ?? []), ...(before?.awaited ?? [])].filter(({ id }) =>
    evaluation.awaits?.includes(id),
  );
  const awaited = found.length > 0 ? { awaited: found } : {};
  if (evaluation.gusts || !old?.gusts)
    return { ...fresh, ...awaited, ...whole, written, kept: false, gustsOld: false };
  return {
    ...fresh,
    ...awaited,
    ...whole,
    evaluation: { ...evaluation, gusts: old.gusts },
    written,
    kept: false,
    gustsOld: true,
  };
}

/** The same for a range: while it cannot be resolved, what was said of it stays. */
function joinedRange(fresh: AnalysisResult, before: RangeResult | undefined, written: Written) {
  const kept = !fresh.judged && fresh.failure === undefined && before?.judged !== undefined;
  if (!kept) return { ...fresh, written, kept };
  const { judged, bill } = before;
  return {
    ...fresh,
    ...(judged ? { judged } : {}),
    ...(bill ? { bill } : {}),
    written: before.written,
    kept,
  };
}
