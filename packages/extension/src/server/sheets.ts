import type { Sheets } from '@tautline/language/server';
import { calculation } from './calculation.ts';
import { drawRange } from './range-sheet.ts';
import { draw } from './sheet-data.ts';

export const sheets: Sheets = { draw, drawRange, calculation };
