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
  {
    id: 'ibc2018:1806.3.4',
    title: 'International Building Code 2018',
    where:
      '1806.3.4, isolated poles that half an inch of movement at the ground does no harm: twice the lateral bearing of the table for short loads; as a thread of engineers and municipal footing calculations have it',
    standing: 'published',
  },
  {
    id: 'ibc2018:1810.3.3.1.5',
    title: 'International Building Code 2018',
    where:
      '1810.3.3.1.5, uplift of a foundation element: factor of safety 3 by analysis, 2 where wind lifts; 1810.3.3.1.9, half of what a helical pile holds; as a public copy of the code has both',
    standing: 'published',
  },
  {
    id: 'stakes:saturated-half',
    title: "Anchoring in wet soil, a tent makers' magazine, June 2009",
    where:
      "stakes in saturated ground hold about half of what they hold in the same ground when dry, from the trade association's study of tent stakes at the University of Illinois; the study itself was not read",
    standing: 'published',
  },
  {
    id: 'tm5-5420:deadmen',
    title: 'TM 5-5420-278-10, bridge anchorage',
    where:
      'table 9, holding power of deadmen in loamy soil by depth and slope; half of it in fine-grained soil of high moisture content',
    standing: 'published',
  },
  {
    id: 'own:backfill-half',
    title: 'Half the strength of what is thrown back',
    where:
      'loam and clay that were dug out and thrown back count with half their strength, sand and gravel as loose: own choice, the same for a post, a deadman and sideways',
    standing: 'common practice, no source',
  },
  {
    id: 'own:loose-top',
    title: 'Loose top of the ground',
    where:
      'friction grows evenly from nothing at the surface to its full value 0.4 m down: own choice, held against two published tests of pipes 50 cm deep',
    standing: 'common practice, no source',
  },
  {
    id: 'own:larger-allowance',
    title: 'Larger of two published allowances',
    where:
      'Broms over 2.5 and IBC 1807.3 are both rules by which a post may be set, so what either allows may be counted on: own choice. Broms knows the soil and its state and grows with the cube of the depth in sand; the table is meant for any soil of its class, wet or dry, and carries the shallow and the soft',
    standing: 'common practice, no source',
  },
  {
    id: 'tests:pull-out',
    title: 'Published pull-out tests, test/reference/ground-pull-tests.test.ts',
    where:
      'the value of the method is taken as the median: rafter pipes 50 cm deep in firm farm soil reached 1.0 and 1.2 times it (Korean Society for Agricultural Machinery and others, JAKO201521059282514, 2015, abstract read); the spread is an own choice',
    standing: 'published',
  },
  {
    id: 'derived:topple',
    title: 'Toppling on the underside',
    where: 'a foot that stands on the ground holds V b / 2 about its edge',
    standing: 'derived',
  },
  { id: 'derived:weight', title: 'Weight', where: 'mass times standard gravity', standing: 'derived' },
];
