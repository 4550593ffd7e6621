import type { Source } from './source.ts';

const NDS = 'ANSI/AWC NDS, National Design Specification for Wood Construction';
const AISI = 'AISI S100-16, Cold-Formed Steel Structural Members';

/** Members, joints, film. */
export const RESISTANCE_SOURCES: readonly Source[] = [
  {
    id: 'aisi-s100:f2.3',
    title: AISI,
    where: 'F2.3, closed cylindrical tubes in bending',
    standing: 'published',
  },
  {
    id: 'aisi-s100:e2',
    title: AISI,
    where: 'E2, flexural buckling (the curve of AISC 360 E3)',
    standing: 'published',
  },
  {
    id: 'aisi-s100:j3.3',
    title: AISI,
    where:
      'J3.3.1, bearing of bolts with washers (table J3.3.1-1, m_f = 1), in the tests of a public calculation',
    standing: 'published',
  },
  {
    id: 'aisi-s100:j4',
    title: AISI,
    where:
      'J4.4, screws pulled out and sheets pulled over them, Ω = 3.00, φ = 0.50, in the tables of public evaluation reports of screws; made for steel, used for plastic sheet too',
    standing: 'published',
  },
  {
    id: 'en1993-1-3:8.2',
    title: 'EN 1993-1-3',
    where:
      'table 8.2, self-tapping screws pulled through under repeated wind (in a public restatement); 0.45 for thin walls from memory; made for steel, used for plastic sheet too',
    standing: 'from memory',
  },
  {
    id: 'nds:12.2',
    title: NDS,
    where:
      '12.2.2, wood screws in withdrawal, 2850 G² D, worked in public for a no. 10 screw; wet service 0.7, K_F and φ from memory',
    standing: 'published',
  },
  {
    id: 'en1995-1-1:8.7.2',
    title: 'EN 1995-1-1',
    where: '8.7.2, eq. 8.38 to 8.40, axially loaded screws, in several public calculations',
    standing: 'published',
  },
  {
    id: 'aisc360:f11',
    title: 'ANSI/AISC 360-16',
    where: 'F11, rounds in bending: F_y Z, at most 1.6 F_y S, in a public restatement',
    standing: 'published',
  },
  {
    id: 'aisc360:h1',
    title: 'ANSI/AISC 360-16',
    where: 'H1-1, bending with thrust, worked in example H.1B of the AISC Design Examples',
    standing: 'published',
  },
  {
    id: 'adm:f',
    title: 'Aluminum Design Manual',
    where:
      'yield over 1.65 for buildings (in the text of an earlier edition, and in public calculations), φ = 0.90 (not seen)',
    standing: 'from memory',
  },
  {
    id: 'en1993-1-1:5.5',
    title: 'EN 1993-1-1',
    where: 'table 5.2, round tube: 50, 70 and 90 ε², in two public calculations; 6.2.5',
    standing: 'published',
  },
  {
    id: 'en1993-1-1:6.3.1',
    title: 'EN 1993-1-1',
    where: '6.3.1.2, tables 6.1 and 6.2, buckling curve c',
    standing: 'published',
  },
  {
    id: 'en1993-1-1:6.2.1',
    title: 'EN 1993-1-1',
    where: 'eq. 6.2, straight sum',
    standing: 'from memory',
  },
  {
    id: 'en1993-1-8:3.6',
    title: 'EN 1993-1-8',
    where: 'table 3.4, bolts in bearing',
    standing: 'published',
  },
  {
    id: 'en1993-1-8:7.3',
    title: 'EN 1993-1-8',
    where: 'table 7.3, plate along a round hollow section, chord face failure; made for welded steel tubes',
    standing: 'from memory',
  },
  {
    id: 'en1999-1-1:6.1',
    title: 'EN 1999-1-1',
    where: '6.1.3, γ_M1 = 1.10, in a public calculation',
    standing: 'published',
  },
  {
    id: 'en1995-1-1:3.1',
    title: 'EN 1995-1-1',
    where: 'tables 2.3 and 3.1, solid timber, in the open textbook Structural Design Essentials',
    standing: 'published',
  },
  {
    id: 'en1995-1-1:6.2.4',
    title: 'EN 1995-1-1',
    where: '6.2.4, bending with thrust',
    standing: 'from memory',
  },
  {
    id: 'en1995-1-1:6.3.2',
    title: 'EN 1995-1-1',
    where: '6.3.2, eq. 6.21 to 6.29, columns, in several public calculations; E_0,05 of EN 338',
    standing: 'published',
  },
  {
    id: 'nds:4.3',
    title: NDS,
    where: 'tables 2.3.2 and 2.3.3 (looked up); 4.3 and 5 % strength over 2.1 by ASTM D245 (not looked up)',
    standing: 'from memory',
  },
  {
    id: 'nds:n.3',
    title: NDS,
    where: 'appendix N, strength format',
    standing: 'published',
  },
  {
    id: 'nds:3.7',
    title: NDS,
    where: '3.7.1, columns',
    standing: 'published',
  },
  {
    id: 'nds:3.9',
    title: NDS,
    where: '3.9.2, bending with thrust, worked in public for a 4x4 post',
    standing: 'published',
  },
  {
    id: 'nds:3.10',
    title: NDS,
    where:
      '3.10.4, bearing across the grain, not nearer than 3 in to the end, in public course notes on bearing at supports',
    standing: 'published',
  },
  {
    id: 'en1995-1-1:6.1.5',
    title: 'EN 1995-1-1',
    where:
      '6.1.5, compression across the grain: 30 mm a side, k_c,90 = 1.5 of single supports, in two public calculations',
    standing: 'published',
  },
  {
    id: 'iso22156:6',
    title: 'ISO 22156:2021, Bamboo culms, structural design',
    where: '6.4, formula 2: C_R, C_DF of service class 2, FS_m, in a public restatement; class 3 not found',
    standing: 'published',
  },
  {
    id: 'iso22156:column',
    title: 'ISO 22156:2021, Bamboo culms, structural design',
    where:
      '9.3, crushing and Euler load joined with c = 0.80, in a public restatement; C_bow for the bow of the culm from memory',
    standing: 'published',
  },
  {
    id: 'astm-d2837:hds',
    title: 'ASTM D2837 and pressure pipe handbooks',
    where: 'hydrostatic design basis, design factor 0.5, temperature factors',
    standing: 'published',
  },
  {
    id: 'practice:guard-factor',
    title: 'Guard factor for members without a standard',
    where: '3 for gusts, 6 for loads that stay',
    standing: 'common practice, no source',
  },
  {
    id: 'practice:plastic-euler',
    title: 'Euler stress over a factor',
    where: '3 allowable, 2 factored',
    standing: 'common practice, no source',
  },
  {
    id: 'euler',
    title: 'Timoshenko and Gere, Theory of Elastic Stability',
    where: '2.1, the pinned column, π² E I / L², as any handbook has it',
    standing: 'published',
  },
  {
    id: 'linear-interaction',
    title: 'Straight sum of utilisations',
    where: 'lower bound for bending with thrust',
    standing: 'derived',
  },
];
