/**
 * The whole house in space, worked out beside the results that come while typing: on saving, after a pause or
 * when asked for. Newest text wins; what was found in an earlier one stays marked as old until it is found again.
 */
import { Cancellation, type LangiumDocument, URI } from 'langium';
import type { CancelToken } from '../analyst/analyst.ts';
import type { Doing, LongWork } from '../analyst/long-work.ts';
import { type WholeHouse, type WholeHouseInput, wholeHouseJob } from '../analyst/whole-house.ts';
import type { Analyses } from './analyses.ts';
import type { FileAnalysis } from './results.ts';
import type { Settings } from './settings.ts';

/** Quiet time after the last edit before the whole house is worked out, where the setting says so, ms. */
const IDLE = 3000;

type Progress = Doing['progress'];

interface Running {
  readonly said: string | undefined;
  readonly source: Cancellation.CancellationTokenSource;
  readonly tellers: Set<Progress>;
  readonly done: Promise<boolean>;
}

interface Found {
  readonly said: string | undefined;
  readonly houses: ReadonlyMap<string, WholeHouse>;
}

export interface WholeHouseServices {
  readonly analyses: Analyses;
  readonly work: LongWork;
  readonly today: () => string | undefined;
  readonly settings: () => Settings;
  readonly documentAt: (uri: URI) => LangiumDocument | undefined;
  /** Shows the progress of work that nobody asked for; gives a teller, and how to end it. */
  readonly show: (title: string) => Promise<{ readonly tell: Progress; readonly end: () => void }>;
}

export class WholeHouses {
  private readonly running = new Map<string, Running>();
  private readonly found = new Map<string, Found>();
  private readonly timers = new Map<string, ReturnType<typeof setTimeout>>();
  private readonly services: WholeHouseServices;

  constructor(services: WholeHouseServices) {
    this.services = services;
    services.analyses.onAnalysed((analysis) => this.settled(analysis));
  }

  /**
   * Works out the houses of a text as it is now, and adds what is found to its results. False when it was stopped,
   * by the token or by a newer text, or when there is nothing to work out.
   */
  async check(document: LangiumDocument, progress?: Progress, token?: CancelToken): Promise<boolean> {
    const { analyses } = this.services;
    const analysis = await analyses.current(document);
    if (!analysis || token?.isCancellationRequested) return false;
    const { uri } = analysis;
    const said = analyses.saidOf(uri);
    const under = this.running.get(uri);
    if (under && under.said !== said) this.stop(uri);
    const running = under && under.said === said ? under : this.begin(analysis, said);
    this.running.set(uri, running);
    const { source, tellers, done } = running;
    if (progress) tellers.add(progress);
    const stopping = token?.onCancellationRequested(() => source.cancel());
    try {
      return await done;
    } finally {
      stopping?.dispose();
    }
  }

  /** A file was saved. */
  saved(uri: string): void {
    if (this.services.settings().wholeHouse !== 'onCommand') this.unasked(uri);
  }

  forget(uri: string): void {
    this.stop(uri);
    this.found.delete(uri);
  }

  dispose(): void {
    for (const uri of [...this.running.keys(), ...this.timers.keys()]) this.stop(uri);
    this.services.work.dispose();
  }

  private stop(uri: string): void {
    clearTimeout(this.timers.get(uri));
    this.timers.delete(uri);
    this.running.get(uri)?.source.cancel();
    this.running.delete(uri);
  }

  /** There are results of the typical frame: what is being worked out for another text is of no use any more. */
  private settled({ uri, results }: FileAnalysis): void {
    const { analyses, settings } = this.services;
    const said = analyses.saidOf(uri);
    const running = this.running.get(uri);
    if (running && running.said !== said) this.stop(uri);
    const lacking = results.filter(
      ({ evaluation, kept, whole }) => evaluation && !kept && whole?.old !== false,
    );
    if (lacking.length === 0) return;
    const found = this.found.get(uri);
    // Back at a text whose houses are known, as after taking an edit back.
    if (found && found.said === said) this.add(uri, found);
    else if (settings().wholeHouse === 'whenIdle' && !this.running.has(uri)) {
      clearTimeout(this.timers.get(uri));
      this.timers.set(
        uri,
        setTimeout(() => this.unasked(uri), IDLE),
      );
    }
  }

  private unasked(uri: string): void {
    const document = this.services.documentAt(URI.parse(uri));
    if (document) this.checkShown(document).catch((error: unknown) => console.error('Whole house:', error));
  }

  private async checkShown(document: LangiumDocument): Promise<void> {
    const analysis = await this.services.analyses.current(document);
    const known = analysis?.results.every(
      ({ evaluation, kept, whole }) => !evaluation || kept || whole?.old === false,
    );
    if (!analysis || known || this.running.has(analysis.uri)) return;
    const shown = await this.services.show('Checking the whole house');
    try {
      await this.check(document, shown.tell);
    } finally {
      shown.end();
    }
  }

  private begin(analysis: FileAnalysis, said: string | undefined): Running {
    const source = new Cancellation.CancellationTokenSource();
    const tellers = new Set<Progress>();
    const tell: Progress = (share, next) => {
      for (const one of tellers) one(share, next);
    };
    const { uri } = analysis;
    const done = this.work(analysis, said, source.token, tell).finally(() => {
      if (this.running.get(uri)?.source === source) this.running.delete(uri);
    });
    return { said, source, tellers, done };
  }

  private async work(
    { uri, results, world }: FileAnalysis,
    said: string | undefined,
    token: CancelToken,
    tell: Progress,
  ): Promise<boolean> {
    const on = this.services.today();
    const all = results.filter(({ evaluation, kept }) => evaluation && !kept);
    const houses = new Map<string, WholeHouse>();
    // An edit in one house leaves the others as they were worked out; somebody who asks again gets all of them.
    const fresh = all.filter(({ whole }) => whole?.old === false);
    const again = fresh.length === all.length;
    if (!again) for (const { shelter, whole } of fresh) if (whole) houses.set(shelter, whole);
    const names = all.filter(({ shelter }) => !houses.has(shelter)).map(({ shelter }) => shelter);
    for (const [index, shelter] of names.entries()) {
      const input: WholeHouseInput = { shelter, ...(on === undefined ? {} : { on }) };
      const house = await this.services.work.run<WholeHouse>(wholeHouseJob, [world], input, {
        token,
        progress: (share, next) => tell((index + share) / names.length, `${shelter}: ${next}`),
      });
      if (token.isCancellationRequested) return false;
      if (house) houses.set(shelter, house);
    }
    this.found.set(uri, { said, houses });
    return houses.size > 0 && this.add(uri, { said, houses });
  }

  private add(uri: string, { said, houses }: Found): boolean {
    return this.services.analyses.improve(uri, said, (result) => {
      const house = houses.get(result.shelter);
      return house && !result.kept ? { ...result, whole: { ...house, old: false } } : result;
    });
  }
}
