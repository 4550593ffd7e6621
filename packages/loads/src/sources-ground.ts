import type { Source } from './source.ts';

/** Soil and what holds in it. */
export const GROUND_SOURCES: readonly Source[] = [];
