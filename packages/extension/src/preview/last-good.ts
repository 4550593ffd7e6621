import type { PreviewAnswer, PreviewShelter } from '@tautline/language/protocol';

/** The shelters of a file as they were last drawn well, and why what is on show may be old. */
export class LastGood {
  file = '';
  shelters: readonly PreviewShelter[] = [];
  private broken: string | undefined;
  private waiting: string | undefined = 'Reading the shelter.';

  answered(answer: PreviewAnswer, file: string): void {
    this.file = file;
    this.waiting = undefined;
    this.broken = answer.broken === undefined ? undefined : `${answer.broken} This is the last good drawing.`;
    this.shelters = answer.broken === undefined ? answer.shelters : this.keepLast(answer.shelters);
  }

  wait(reason: string): void {
    this.waiting = reason;
  }

  named(name: string | undefined): PreviewShelter | undefined {
    return this.shelters.find((shelter) => shelter.name === name) ?? this.shelters[0];
  }

  /** Why what is on show of a shelter is old; undefined when it is not. */
  stale(shelter: PreviewShelter): string | undefined {
    return this.waiting ?? this.broken ?? shelter.stale;
  }

  /** Why there is nothing to show. */
  nothing(): string {
    return this.waiting ?? this.broken ?? `${this.file} describes no shelter yet.`;
  }

  /** Those of before, replaced where the broken text still gave a drawing. */
  private keepLast(now: readonly PreviewShelter[]): readonly PreviewShelter[] {
    const drawn = now.filter((shelter) => shelter.drawings.length > 0);
    const kept = this.shelters.filter((old) => !drawn.some((shelter) => shelter.name === old.name));
    return [...drawn, ...kept];
  }
}
