import type { Cover, FasteningItem } from '@tautline/shelter';

/** What a fastening may hold per metre of edge before any factor, N/m, or why that is not known. */
export function heldPerMetre(cover: Cover, fastening: FasteningItem): number | { readonly reason: string } {
  if (fastening.per === 'length') return fastening.holds;
  if (cover.fasteningSpacing === undefined)
    return { reason: `how far apart the pieces of ${fastening.title} are was not said` };
  return fastening.holds / cover.fasteningSpacing;
}
