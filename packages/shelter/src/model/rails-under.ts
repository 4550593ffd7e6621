import type { Rail, Shelter } from './shelter.ts';

/** Rails that hold the roof up between its sides: the ridge, and the inner lines of a grid. */
export function railsUnder({ ridge, inner = [] }: Pick<Shelter, 'ridge' | 'inner'>): readonly Rail[] {
  return ridge === undefined ? inner : [ridge, ...inner];
}
