import type { PreviewAnswer, PreviewName, PreviewShelter } from '@tautline/language/protocol';
import { shownName } from './shown-name.ts';

/** The shelters of a file as each was last drawn well, and why what is on show may be old. */
export class LastGood {
  file = '';
  /** All that the file can show. */
  names: readonly PreviewName[] = [];
  /** The one that was last answered about. */
  private told: string | undefined;
  private readonly drawn = new Map<string, PreviewShelter>();
  private broken: string | undefined;
  private waiting: string | undefined = 'Reading the shelter.';

  answered(answer: PreviewAnswer, file: string): void {
    const { broken, names, one, shelters } = answer;
    this.file = file;
    this.waiting = undefined;
    this.broken = broken;
    this.told = one ?? shelters[0]?.name ?? this.told ?? names[0]?.name;
    // While the text is broken, a name may be lost for a moment.
    const lost = this.names.filter((old) => !names.some(({ name }) => name === old.name));
    this.names = broken === undefined ? names : [...names, ...lost];
    for (const shelter of shelters) {
      if (broken === undefined || shelter.drawings.length > 0) this.drawn.set(shelter.name, shelter);
    }
    for (const name of this.drawn.keys()) {
      if (!this.names.some((one) => one.name === name)) this.drawn.delete(name);
    }
  }

  wait(reason: string): void {
    this.waiting = reason;
  }

  /** What there is to show: the one that was last answered about, also while another is asked for. */
  get shown(): PreviewShelter | undefined {
    return this.drawn.get(this.told ?? '');
  }

  /** Name of the one that is on show, or will be once there is an answer about it. */
  chosen(wanted: string | undefined): string | undefined {
    return this.awaited(wanted) ?? this.told;
  }

  /** Why what is on show is old; undefined when it is not. */
  stale(wanted: string | undefined): string | undefined {
    const { broken } = this;
    const old = broken === undefined ? this.shown?.stale : `${broken} This is the last good drawing.`;
    return this.late(wanted) ?? old;
  }

  /** Why there is nothing to show. */
  nothing(wanted: string | undefined): string {
    return this.late(wanted) ?? this.broken ?? `${this.file} describes no shelter yet.`;
  }

  private late(wanted: string | undefined): string | undefined {
    const awaited = this.awaited(wanted);
    return this.waiting ?? (awaited === undefined ? undefined : `Drawing ${shownName(awaited)}.`);
  }

  private awaited(wanted: string | undefined): string | undefined {
    return wanted !== this.told && this.names.some(({ name }) => name === wanted) ? wanted : undefined;
  }
}
