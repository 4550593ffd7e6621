import type { Cap, Cover, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { stormOff } from '../src/index.ts';
import { fastening, ridgedHouse, withCover } from './houses.ts';

const house = withCover(ridgedHouse(), { fastening: fastening(1500) });
const roof = house.covers.find(({ place }) => place === 'roof')!;
const of = (kind: string, place = 'roof'): Cover =>
  ({ ...roof, place, skin: { ...roof.skin, kind } }) as Cover;
const said = (covers: readonly Cover[], more: Partial<Shelter> = {}) =>
  stormOff({ ...house, covers, ...more });

describe('what comes off before a storm', () => {
  it('is the film of a roof of film', () => {
    expect(stormOff(house)).toMatchObject({ what: 'film', head: 'Film off', order: 'Have the film off' });
  });
  it('is the mesh of a roof of mesh', () => {
    expect(said([of('mesh')]).order).toBe('Have the mesh off');
  });
  it('is no film where sheets lie on the roof, whatever the walls have', () => {
    for (const covers of [[of('sheet')], [of('film', 'sides'), of('sheet')]]) {
      const { what, order, mark, head } = said(covers);
      expect(what).toBe('sheet');
      expect(order).toMatch(/no film to take off and the sheets stay on/);
      expect(`${head} ${mark}`).not.toMatch(/film/i);
    }
  });
  it('is every cap, of sheet or of film', () => {
    const cap = { type: 'cap' } as Cap;
    expect(said([], { roof: cap }).order).toBe('Have the caps lifted off and stacked');
  });
  it('is what hangs on the walls under a bare roof, and nothing of a bare frame', () => {
    expect(said([of('mesh', 'sides')]).what).toBe('mesh');
    expect(said([]).what).toBe('nothing');
  });
});
