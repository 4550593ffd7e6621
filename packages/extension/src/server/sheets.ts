import type { ShelterTemplate } from '@tautline/language/protocol';
import type { Sheets } from '@tautline/language/server';
import { calculation } from './calculation.ts';
import { draw } from './sheet-data.ts';

/** Put in by build.mjs, made from the examples (templates.mjs). */
declare const TAUTLINE_TEMPLATES: readonly ShelterTemplate[];

export const sheets: Sheets = { draw, calculation, templates: TAUTLINE_TEMPLATES };
