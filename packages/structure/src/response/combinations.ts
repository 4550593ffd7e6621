import { type Combination, combinations, shortestOf } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import { type CombinedLoad, combine, type LoadCase, stayOf } from '../actions/load-case.ts';

/**
 * All combinations of the site's load basis on one frame. A combination with wind is made once for each
 * wind case; a combination whose every acting case is absent is left out, as is one that repeats another.
 */
export function combinedLoads(shelter: Shelter, cases: readonly LoadCase[]): CombinedLoad[] {
  const winds = cases.filter((loadCase) => loadCase.nature === 'wind');
  const usual = cases.filter((loadCase) => loadCase.nature !== 'wind' && loadCase.on === undefined);
  const snows = usual.filter((loadCase) => loadCase.nature === 'snow');
  // A person is at one place at a time, so persons take turns as winds and snows do.
  const persons = usual.filter((loadCase) => loadCase.nature === 'person');
  const others = usual.filter((loadCase) => !['snow', 'person'].includes(loadCase.nature));
  // A frame that carries less breadth has weight, crop and snow of its own.
  const under = (one: LoadCase, wind: LoadCase | undefined): LoadCase =>
    (wind?.on === undefined ? undefined : cases.find(({ id }) => id === `${one.id}/${wind.on}`)) ?? one;
  const ends = winds.some((wind) => wind.on !== undefined);
  const seen = new Set<string>();
  const loads: CombinedLoad[] = [];
  for (const combination of combinations(shelter.site.basis, shelter.site.lowHazard)) {
    const windChoices = combination.factors.wind !== 0 && winds.length > 0 ? winds : [undefined];
    const snowChoices = combination.factors.snow !== 0 && snows.length > 0 ? snows : [undefined];
    const personChoices = combination.factors.person !== 0 && persons.length > 0 ? persons : [undefined];
    for (const wind of windChoices) {
      for (const [snow, person] of pairs(snowChoices, personChoices)) {
        const chosen = [...others, wind, snow, person]
          .filter((loadCase) => loadCase !== undefined)
          .map((loadCase) => under(loadCase, wind));
        const parts = chosen
          .map((loadCase) => ({
            factor: factorOf(combination, loadCase),
            loadCase,
          }))
          .filter((part) => part.factor !== 0);
        const key = parts.map((part) => `${part.factor}·${part.loadCase.id}`).join('+');
        if (parts.length === 0 || seen.has(key)) continue;
        seen.add(key);
        loads.push({
          id: [combination.id, wind?.id, snow?.id, person?.id].filter((id) => id !== undefined).join('/'),
          title: `${parts
            .map((part) => `${factorText(part.factor)}${inSentence(part.loadCase.title)}`)
            .join(' + ')}${ends && wind !== undefined ? `, on ${wind.on ?? 'the typical frame'}` : ''}`,
          source: combination.source,
          ...combine(parts),
          duration: shortestOf(parts.map(({ loadCase }) => stayOf[loadCase.nature])),
          use: combination.use,
          ...(wind === undefined ? {} : { wind: wind.id }),
          ...(wind?.on === undefined ? {} : { on: wind.on }),
          ...(wind?.steps === undefined ? {} : { steps: wind.steps }),
        });
      }
    }
  }
  return loads;
}

function pairs<A, B>(some: readonly A[], others: readonly B[]): (readonly [A, B])[] {
  return some.flatMap((a) => others.map((b) => [a, b] as const));
}

function factorOf(combination: Combination, loadCase: LoadCase): number {
  return combination.factors[loadCase.nature] ?? 0;
}

/** A factor before the name of its load, to three digits; nothing for 1. */
function factorText(factor: number): string {
  return factor === 1 ? '' : `${Number(factor.toPrecision(3))} × `;
}

/** A title inside a sentence begins with a small letter. */
function inSentence(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1);
}
