/** The one list of what this package leans on. Every step names an id of it. */

import type { Source } from './source.ts';
import { AGEING_SOURCES } from './sources-ageing.ts';
import { CLIMATE_SOURCES } from './sources-climate.ts';
import { GROUND_SOURCES } from './sources-ground.ts';
import { LOAD_SOURCES } from './sources-load.ts';
import { RESISTANCE_SOURCES } from './sources-resistance.ts';

/** All sources by id. */
export const sources: Readonly<Record<string, Source>> = Object.fromEntries(
  [...LOAD_SOURCES, ...RESISTANCE_SOURCES, ...AGEING_SOURCES, ...GROUND_SOURCES, ...CLIMATE_SOURCES].map(
    (source) => [source.id, source],
  ),
);

/** The source with that id. Throws a RangeError for an id that is not in the list. */
export function sourceOf(id: string): Source {
  const source = sources[id];
  if (source === undefined) throw new RangeError(`no source has the id ${id}`);
  return source;
}
