import type { DetailAnswer, DetailWanted } from '../details.ts';

export interface DetailMessage {
  readonly id: string;
  readonly shelter: string;
  readonly wanted: DetailWanted;
}

/** Answers that are kept: somebody who slides through gusts leaves many behind. */
const KEPT = 60;

/**
 * Answers to what is asked for on demand. An old answer stays until the new one is there, so nothing
 * flickers; what is not on show is not asked for.
 */
export class DetailsKept {
  private readonly ask: (message: DetailMessage) => void;
  private readonly answers = new Map<string, DetailAnswer>();
  private readonly asked = new Set<string>();
  /** Answers to questions about the text as it is now. */
  private readonly fresh = new Set<string>();
  private round = 0;

  constructor(ask: (message: DetailMessage) => void) {
    this.ask = ask;
  }

  /** The newest answer there is; asks for a newer one if the shelter has changed since. */
  of(shelter: string, wanted: DetailWanted): DetailAnswer | undefined {
    const key = JSON.stringify([shelter, wanted]);
    if (!this.asked.has(key)) {
      this.asked.add(key);
      this.ask({ id: `${this.round} ${key}`, shelter, wanted });
    }
    return this.answers.get(key);
  }

  /** The same, but nothing of an earlier text. */
  now(shelter: string, wanted: DetailWanted): DetailAnswer | undefined {
    const newest = this.of(shelter, wanted);
    return this.fresh.has(JSON.stringify([shelter, wanted])) ? newest : undefined;
  }

  received(id: string, answer: DetailAnswer): void {
    const key = id.slice(id.indexOf(' ') + 1);
    if (id.startsWith(`${this.round} `)) this.fresh.add(key);
    if (answer.kind === 'overtaken') {
      // Asked for again when it is on show again.
      this.asked.delete(key);
      this.fresh.delete(key);
      return;
    }
    this.answers.delete(key);
    this.answers.set(key, answer);
    const [oldest] = this.answers.keys();
    if (this.answers.size > KEPT && oldest !== undefined) {
      this.answers.delete(oldest);
      this.asked.delete(oldest);
      this.fresh.delete(oldest);
    }
  }

  /** The text has changed: everything has to be asked for again when it is shown. */
  outdate(): void {
    this.round += 1;
    this.asked.clear();
    this.fresh.clear();
  }
}
