/** Another amount in a price list changes what things cost, and nothing that is found: no frame is looked at again. */
import { resolveRange, resolveShelter, type SpecWorld } from '@tautline/shelter';
import type { WorkedOut } from './result.ts';

/** A result with the prices of a world that differs in amounts alone; undefined where there is nothing to keep. */
export function repriced(world: SpecWorld, before: WorkedOut): WorkedOut | undefined {
  const { evaluation, judged, shelter: name } = before;
  if (evaluation) {
    const { shelter, problems } = resolveShelter(name, world);
    return shelter && { ...before, problems, evaluation: { ...evaluation, shelter } };
  }
  if (!judged) return undefined;
  const { range, problems } = resolveRange(name, world);
  return range && { ...before, problems, judged: { ...judged, range } };
}
