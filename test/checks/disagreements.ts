/** Where the verdict at the site's loads and the order of failure tell different things of one shelter. */
import { checks, type Evaluation } from '@tautline/checks';

/** Checks whose limits are ranked in the live tier. */
const ranking = new Set(
  checks.filter(({ limits, needs }) => limits !== undefined && needs !== 'house').map(({ id }) => id),
);

/** What one of the two tells and the other does not. */
export function disagreements({ shelter, findings, notChecked, gusts }: Evaluation): string[] {
  const { gust } = shelter.site;
  const failures = gusts?.failures ?? [];
  const past = findings.filter(({ id, utilisation }) => ranking.has(id) && (utilisation ?? 0) > 1);
  const unranked = past
    // Spans, and what gives way as a whole, are no limits of a gust.
    .filter(({ loadCase }) => loadCase !== undefined)
    .filter(
      ({ id, part }) => !failures.some((one) => one.check === id && one.part === part && one.gust <= gust),
    )
    .map(({ id, part, utilisation }) => `${id} of ${part} fails at ${utilisation}, and is not ranked there`);
  const lost = new Set(notChecked.map(({ id }) => id));
  const untold = failures
    .filter(({ check, estimated }) => ranking.has(check) && !estimated)
    // Exactly at the limit both are right.
    .filter((one) => one.gust < 0.999 * gust)
    .filter(
      ({ check, part }) => !past.some((one) => one.id === check && one.part === part) && !lost.has(check),
    )
    .map(({ check, part, gust: at }) => `${check} of ${part} is ranked at ${at} m/s, and does not fail`);
  return [...unranked, ...untold];
}
