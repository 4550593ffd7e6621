/** The example files, for tests over all of them. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const folder = fileURLToPath(new URL('../../examples/', import.meta.url));
/** Ages are counted to this day, so that the verdicts do not change with the calendar. */
export const day = '2026-11-25';

export const names = readdirSync(folder)
  .filter((name) => name.endsWith('.shelter'))
  .sort();
export const flawed = names.filter((name) => name.endsWith('-flawed.shelter'));
export const sound = flawed.map((name) => name.replace('-flawed', ''));
export const textOf = (name: string): string => readFileSync(folder + name, 'utf8');
