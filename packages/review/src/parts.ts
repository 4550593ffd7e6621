/** Parts of the built shelter that came, went or are no longer the same. */
import { describeParts } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';

export interface PartChange {
  /** Id of the part in the model and in drawings. */
  readonly part: string;
  readonly change: 'added' | 'removed' | 'changed';
}

/** What each part is, without where it was written and what it costs. */
function partsOf(shelter: Shelter): ReadonlyMap<string, string> {
  const shown = new Set(describeParts(shelter, 'metric').map(({ part }) => part));
  const parts = new Map<string, string>();
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    const id = partId(value, shown);
    if (id !== undefined && !parts.has(id)) parts.set(id, plain(value, shown));
    for (const inner of Object.values(value)) walk(inner);
  };
  walk(shelter);
  return parts;
}

/** Ids of items, too, are strings with an origin beside them; only items have a source. */
function partId(value: object, shown: ReadonlySet<string>): string | undefined {
  if (!('id' in value) || !('origin' in value) || 'source' in value) return undefined;
  return typeof value.id === 'string' && shown.has(value.id) ? value.id : undefined;
}

/** No part of how a thing is built. */
const beside = new Set([
  'origin',
  'jointOrigin',
  'source',
  'title',
  'prices',
  'installed',
  'assumed',
  'sizedBy',
]);

function plain(part: object, shown: ReadonlySet<string>): string {
  return JSON.stringify(part, function (this: unknown, key, value: unknown) {
    if (beside.has(key)) return undefined;
    // A part inside the part is compared by itself.
    if (key !== '' && typeof value === 'object' && value !== null) return partId(value, shown) ?? value;
    return value;
  });
}

export function partChanges(before: Shelter | undefined, after: Shelter | undefined): readonly PartChange[] {
  if (!before || !after) return [];
  const old = partsOf(before);
  const now = partsOf(after);
  return [
    ...[...now].flatMap(([part, built]): PartChange[] => {
      const was = old.get(part);
      if (was === built) return [];
      return [{ part, change: was === undefined ? 'added' : 'changed' }];
    }),
    ...[...old.keys()]
      .filter((part) => !now.has(part))
      .map((part): PartChange => ({ part, change: 'removed' })),
  ];
}

/** A part in words, as the key of a drawing has it. */
export function partWords(shelter: Shelter, part: string, system: System): string {
  return describeParts(shelter, system).find((row) => row.part === part)?.words ?? part;
}
