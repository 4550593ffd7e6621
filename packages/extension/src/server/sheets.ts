import type { Sheets } from '@tautline/language/server';
import { calculation } from './calculation.ts';
import { draw } from './sheet-data.ts';

export const sheets: Sheets = { draw, calculation };
