/** Every law over many subjects: how often each was asked, and what broke. */
import { breaksOf } from './law.ts';
import { laws } from './laws.ts';
import { judged, type Subject } from './subject.ts';

export interface Survey {
  readonly houses: number;
  /** Cases by name of the law. */
  readonly cases: ReadonlyMap<string, number>;
  readonly breaks: readonly string[];
}

/** `asks` tells which of the laws a subject is asked about: all of them unless said. */
export function survey(
  subjects: readonly Subject[],
  asks: (subject: number, law: number) => boolean = () => true,
  gusts: (subject: number) => boolean = () => false,
): Survey {
  const cases = new Map<string, number>(laws.map(({ name }) => [name, 0]));
  const breaks: string[] = [];
  let houses = 0;
  for (const [index, subject] of subjects.entries()) {
    const before = judged(subject, undefined, gusts(index));
    if (before === undefined) continue;
    houses += 1;
    for (const [number, law] of laws.entries()) {
      if (law.changed !== undefined && law.seldom !== true && !asks(index, number)) continue;
      const found = breaksOf(law, subject, before);
      if (found.asked) cases.set(law.name, cases.get(law.name)! + 1);
      breaks.push(...found.breaks);
    }
  }
  return { houses, cases, breaks };
}
