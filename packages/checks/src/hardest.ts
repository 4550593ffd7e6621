import type { Finding } from './finding.ts';

/** What of a finding tells how hard a part is used. */
type Use = Pick<Finding, 'utilisation' | 'nature' | 'verdict'>;

/** A finding that has a utilisation. */
export type Used<T extends Use = Finding> = T & { readonly utilisation: number };

/**
 * The finding that uses most of what it may take, of those that say whether the house stands: light, heat, life and
 * lengths of stock have shares of their own, which are not to be ranked with strength. The first of equals.
 */
export function hardestOf<T extends Use>(findings: readonly T[]): Used<T> | undefined {
  let most: Used<T> | undefined;
  for (const finding of findings) {
    const { utilisation, nature, verdict } = finding;
    if (nature !== undefined || verdict === 'not checked') continue;
    if (utilisation === undefined || !Number.isFinite(utilisation)) continue;
    if (most === undefined || utilisation > most.utilisation) most = { ...finding, utilisation };
  }
  return most;
}
