import type { Source } from './source.ts';

/** Water, heat, light and film. */
export const CLIMATE_SOURCES: readonly Source[] = [];
