import type { Source } from './source.ts';

const ASCE = 'ASCE/SEI 7-16, Minimum Design Loads';
const EN_WIND = 'EN 1991-1-4:2005, Wind actions';
const EN_SNOW = 'EN 1991-1-3:2003, Snow loads';

/** Wind, snow, rain, people, combinations. 'published' means looked up in a public restatement of the standard. */
export const LOAD_SOURCES: readonly Source[] = [
  {
    id: 'asce7-16:26.10',
    title: ASCE,
    where: '26.10.2, q = 0.613 K_z K_zt K_d K_e V²',
    standing: 'published',
  },
  {
    id: 'asce7-16:26.10-1',
    title: ASCE,
    where: 'tables 26.10-1 and 26.11-1',
    standing: 'published',
  },
  {
    id: 'asce7-16:c26.5',
    title: ASCE,
    where: 'commentary C26.5, return periods outside cyclone regions',
    standing: 'from memory',
  },
  {
    id: 'asce7-16:28.3-1',
    title: ASCE,
    where: 'figure 28.3-1, low-rise buildings, end zones; table 26.13-1',
    standing: 'published',
  },
  {
    id: 'asce7-16:27.3-1',
    title: ASCE,
    where: 'figure 27.3-1, walls and gable roofs; table 26.13-1',
    standing: 'published',
  },
  {
    id: 'asce7-16:27.3-3',
    title: ASCE,
    where: 'figure 27.3-3, arched roofs',
    standing: 'published',
  },
  {
    id: 'asce7-16:27.3-4',
    title: ASCE,
    where: 'figure 27.3-4, single-slope free roofs',
    standing: 'published',
  },
  {
    id: 'asce7-16:27.3-5',
    title: ASCE,
    where: 'figure 27.3-5, pitched free roofs',
    standing: 'published',
  },
  {
    id: 'asce7-16:27.3-7',
    title: ASCE,
    where: 'figure 27.3-7, free roofs with wind along',
    standing: 'published',
  },
  {
    id: 'asce7-16:30.3-1',
    title: ASCE,
    where: 'figure 30.3-1, walls, zones 4 and 5',
    standing: 'from memory',
  },
  {
    id: 'asce7-16:30.3-8',
    title: ASCE,
    where: 'figure 30.3-8, arched roofs: 0.87 C_p away from edges',
    standing: 'published',
  },
  {
    id: 'asce7-16:30.7',
    title: ASCE,
    where:
      'figures 30.7-1 and 30.7-2, free roofs, clear and obstructed flow; suction in clear flow in a public restatement, the rest from memory',
    standing: 'published',
  },
  {
    id: 'asce7-22:30.3-2',
    title: 'ASCE/SEI 7-22, Minimum Design Loads',
    where: 'figures 30.3-2A to -2C, gable roofs',
    standing: 'published',
  },
  {
    id: 'asce7-16:7.3',
    title: ASCE,
    where: '7.3, flat-roof snow',
    standing: 'published',
  },
  {
    id: 'asce7-16:7.3.4',
    title: ASCE,
    where:
      '7.3.4, least snow of low roofs, I_s p_g up to 20 psf, worked in public for a roof in Lancaster and discussed for two towns',
    standing: 'published',
  },
  {
    id: 'asce7-16:7.4',
    title: ASCE,
    where: '7.4 and figure 7.4-1c, cold slippery roofs, in a public restatement',
    standing: 'published',
  },
  {
    id: 'asce7-16:7.6.1',
    title: ASCE,
    where: '7.6.1, eq. 7.7-1 and figure 7.6-1, unbalanced snow on gables, in a public restatement',
    standing: 'published',
  },
  {
    id: 'asce7-16:7.6.2',
    title: ASCE,
    where: '7.6.2 and figure 7.4-2, unbalanced snow on curved roofs',
    standing: 'from memory',
  },
  {
    id: 'asce7-16:8.3',
    title: ASCE,
    where: '8.3, rain load, R = 0.0098 (d_s + d_h) kPa and mm, in several public restatements',
    standing: 'published',
  },
  {
    id: 'asce7-16:4.3-1',
    title: ASCE,
    where: 'table 4.3-1, screen and fabric roofs on a frame',
    standing: 'from memory',
  },
  {
    id: 'asce7-16:4.5.1',
    title: ASCE,
    where: '4.5.1, guard infill',
    standing: 'from memory',
  },
  {
    id: 'asce7-16:2.4.1',
    title: ASCE,
    where: '2.4.1, allowable stress combinations',
    standing: 'published',
  },
  {
    id: 'asce7-16:2.3.1',
    title: ASCE,
    where: '2.3.1, strength combinations',
    standing: 'published',
  },
  {
    id: 'asce7-16:cc',
    title: ASCE,
    where: 'commentary to appendix C, in-use combinations',
    standing: 'from memory',
  },
  {
    id: 'derived:gust-to-mean',
    title: EN_WIND,
    where: 'eq. 4.7 and 4.8 turned around: the pressure of the gust is kept',
    standing: 'derived',
  },
  {
    id: 'en1991-1-4:4.5',
    title: EN_WIND,
    where: '4.5, eq. 4.4, 4.5, 4.7, 4.8; table 4.1',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.2.2',
    title: EN_WIND,
    where: '7.2.2, table 7.1, walls; as three public restatements have it',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.2.4',
    title: EN_WIND,
    where: '7.2.4, table 7.3a, single slopes, restated of the Danish edition; 7.2.9 inside',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.3b',
    title: EN_WIND,
    where: '7.2.4, table 7.3b, single slopes with the wind along, in two public restatements; 7.2.9 inside',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.2.5',
    title: EN_WIND,
    where: '7.2.5, tables 7.4a and 7.4b, duopitch roofs, restated of the Bulgarian edition; 7.2.9 inside',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.2.8',
    title: EN_WIND,
    where: '7.2.8, figure 7.11, vaulted roofs; 7.2.9 inside',
    standing: 'from memory',
  },
  {
    id: 'en1991-1-4:7.3-mono',
    title: EN_WIND,
    where: '7.3, table 7.6, monopitch canopies; as two public restatements have it',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.3-duo',
    title: EN_WIND,
    where: '7.3, table 7.7, duopitch canopies, which is table 14 of SANS 10160-3 in a public restatement',
    standing: 'published',
  },
  {
    id: 'en1991-1-4:7.5',
    title: EN_WIND,
    where: '7.5, table 7.10, friction of ribbed surfaces, in a public restatement',
    standing: 'published',
  },
  {
    id: 'en1991-1-3:5.3.2',
    title: EN_SNOW,
    where: '5.3.2 and table 5.2, monopitch roofs',
    standing: 'published',
  },
  {
    id: 'en1991-1-3:5.3.3',
    title: EN_SNOW,
    where: '5.3.3 and table 5.2, pitched roofs',
    standing: 'published',
  },
  {
    id: 'en1991-1-3:5.3.5',
    title: EN_SNOW,
    where: '5.3.5, figures 5.5 and 5.6, cylindrical roofs, restated of the Polish edition',
    standing: 'published',
  },
  {
    id: 'en1991-1-1:6.10',
    title: 'EN 1991-1-1:2002, Imposed loads',
    where: 'table 6.10, roofs of category H',
    standing: 'from memory',
  },
  {
    id: 'en1990:6.10',
    title: 'EN 1990:2002, Basis of structural design',
    where: 'eq. 6.10, tables A1.1, A1.2(A), A1.2(B), in Steel Buildings in Europe, Multi-storey part 3; B3',
    standing: 'published',
  },
  {
    id: 'en1990:6.14',
    title: 'EN 1990:2002, Basis of structural design',
    where: 'eq. 6.14b, characteristic combination, in several public restatements',
    standing: 'published',
  },
];
