/** Short ways of writing entries, and the groups of item kinds that sentences name again and again. */
import type { Entry } from './entry.ts';

export type More = Partial<Pick<Entry, 'many' | 'required' | 'also' | 'facts'>>;

export function fact(word: string, sentence: string, doc: string, example: string, more: More = {}): Entry {
  return { word, sentence, doc, example, ...more };
}

export const needed: More = { required: true };
export const several: More = { many: true };

/** Kinds of stock item that carry bending. */
export const members = 'pipe|rod|pole|lumber';
export const joints = 'coupler|fitting';
/** What a foot can be made of. */
export const anchorLike = 'rod|pipe|pole|lumber|anchor';
export const skins = 'film|mesh|sheet';
export const anything = 'pipe|rod|pole|lumber|cable|film|mesh|sheet|coupler|fitting|fastening|anchor|supply';
