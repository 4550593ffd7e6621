import type { Source } from './source.ts';

/** Soil and what holds in it. */
export const GROUND_SOURCES: readonly Source[] = [
  {
    id: 'ibc2018:1806.2',
    title: 'International Building Code 2018',
    where: 'table 1806.2, presumptive values',
    standing: 'published',
  },
  {
    id: 'ibc2018:1807.3',
    title: 'International Building Code 2018',
    where: '1807.3.2, posts in earth (ASABE EP486 of 1997 has the same root)',
    standing: 'published',
  },
  {
    id: 'practice:half-presumptive',
    title: 'Half of IBC table 1806.2',
    where: 'loose sand and soft clay, which the table leaves to a soil test',
    standing: 'common practice, no source',
  },
  {
    id: 'navfac-dm7:beta',
    title: 'NAVFAC DM 7.2',
    where: 'skin friction K tan δ of driven piles in tension',
    standing: 'from memory',
  },
  {
    id: 'api-rp2a:alpha',
    title: 'API RP 2A (1986)',
    where:
      'adhesion factor α by undrained shear strength: 1 up to 24 kPa, 0.5 from 72 kPa; 25 and 75 kPa in a public restatement',
    standing: 'published',
  },
  {
    id: 'meyerhof-adams:1968',
    title: 'Meyerhof and Adams, Ultimate uplift capacity of foundations (1968)',
    where: 'breakout of shallow plates in sand',
    standing: 'published',
  },
  {
    id: 'das:clay-anchor',
    title: 'Das, Shallow Foundations, uplift in clay',
    where: 'breakout factor F_c and its limit',
    standing: 'from memory',
  },
  {
    id: 'broms:1964a',
    title: 'Broms, Lateral resistance of piles in cohesive soils (1964)',
    where: 'short and long piles',
    standing: 'published',
  },
  {
    id: 'broms:1964b',
    title: 'Broms, Lateral resistance of piles in cohesionless soils (1964)',
    where: 'short and long piles, 3 K_p γ z d over the depth, as two public calculations have it',
    standing: 'published',
  },
  {
    id: 'terzaghi:1955',
    title: 'Terzaghi, Evaluation of coefficients of subgrade reaction (1955)',
    where: 'n_h of sand over the water, 7, 21 and 56 tons a cubic foot, as two public notes have it',
    standing: 'published',
  },
  {
    id: 'davisson:67cu',
    title: 'Davisson (1970), subgrade modulus 67 c_u',
    where: 'lateral subgrade of clay',
    standing: 'from memory',
  },
  {
    id: 'meyerhof:1963',
    title: 'Meyerhof, Some recent research on the bearing capacity of foundations (1963)',
    where: 'bearing, shape and depth factors',
    standing: 'published',
  },
  { id: 'derived:weight', title: 'Weight', where: 'mass times standard gravity', standing: 'derived' },
];
