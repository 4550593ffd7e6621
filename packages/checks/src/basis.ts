import { combinations } from '@tautline/loads';
import type { Site } from '@tautline/shelter';

/** Largest factor that the site's combinations for members and joints put on wind: 0.6, 1 or 1.5 by basis. */
export function windFactor(site: Site): number {
  return Math.max(
    ...combinations(site.basis, site.lowHazard)
      .filter((combination) => combination.use !== 'service')
      .map((combination) => combination.factors.wind),
  );
}
