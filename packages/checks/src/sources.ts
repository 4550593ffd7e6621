import { sources as loadSources, type Source } from '@tautline/loads';

/** Sources of the mechanics and trade facts the checks lean on, beside those of the load standards. */
const own: readonly Source[] = [
  {
    id: 'derived',
    title: 'Follows from the geometry or the spec',
    where: 'see the formula',
    standing: 'derived',
  },
  {
    id: 'catalogue',
    title: 'Fact of the stock item',
    where: 'its entry in the catalogue names its source',
    standing: 'derived',
  },
  {
    id: 'frame',
    title: 'Plane frame analysis of the typical frame',
    where:
      'corotational beams, large rotations; checked against closed forms and an independent solver in test/reference',
    standing: 'derived',
  },
  {
    id: 'house',
    title: 'Analysis of the whole house in space',
    where:
      'corotational beams, large rotations, cables that go slack; checked against closed forms and an independent solver in test/reference',
    standing: 'derived',
  },
  {
    id: 'frame-ponding',
    title: 'Water on a frame that gives: equilibrium of pocket and bent shape',
    where:
      'the amount of water is raised in steps, its level and the bent shape found together; exact solutions of a level beam held in test/reference',
    standing: 'derived',
  },
  {
    id: 'membrane-ponding',
    title: 'Stability of water on a tensioned membrane',
    where: 'strip: T > γ s² / π²; panel: T (1/s² + 1/b²) π² > γ',
    standing: 'derived',
  },
  {
    id: 'parabola',
    title: 'Cable and strip as a parabola',
    where: 'H = w L² / 8 f, length L (1 + 8/3 (f/L)²)',
    standing: 'derived',
  },
  {
    id: 'membrane-arc',
    title: 'Film as an arc under even pressure',
    where: 'equilibrium of a cylinder: T = p R',
    standing: 'derived',
  },
  {
    id: 'statics',
    title: 'Balance of forces and moments',
    where: 'see the formula',
    standing: 'derived',
  },
  {
    id: 'aisc360:h1.3',
    title: 'AISC 360, bending in one plane and buckling in the other',
    where: 'H1.3, eq. H1-3, P/P_c (1.5 - 0.5 P/P_c) + (M/M_c)², in a public restatement of the 2016 edition',
    standing: 'published',
  },
  {
    id: 'en1995-1-1:7.2',
    title: 'EN 1995-1-1, deflection of beams',
    where: 'table 7.2, l/150 as the loosest limit of the final deflection',
    standing: 'from memory',
  },
  {
    id: 'beaufort',
    title: 'Beaufort scale of wind',
    where: 'force 5, fresh breeze, up to 10.7 m/s: published tables begin force 6 at 10.8',
    standing: 'published',
  },
  {
    id: 'fao56:35',
    title: 'FAO Irrigation and Drainage Paper 56',
    where: 'eq. 35, sun from hours of sunshine; eq. 48, vapour from the least temperature',
    standing: 'published',
  },
  {
    id: 'sun-altitude',
    title: 'Sun on level ground at noon of midsummer',
    where:
      '1361 W/m2 · 0.75 · sin of the altitude 90° - |latitude - declination 23.44°|; share of clear air as FAO-56 eq. 37',
    standing: 'derived',
  },
  {
    id: 'timoshenko:beam',
    title: 'Timoshenko, Strength of Materials',
    where: 'bending stress σ = M / W, strain c / R',
    standing: 'from memory',
  },
  {
    id: 'timoshenko:stability',
    title: 'Timoshenko and Gere, Theory of Elastic Stability',
    where: 'loss of positive definiteness along the load path',
    standing: 'from memory',
  },
  {
    id: 'beam-table',
    title: 'Beam tables (AISC Manual table 3-23)',
    where: 'simple span, even load: w L² / 8, 5 w L⁴ / 384 E I, as any beam table has it',
    standing: 'published',
  },
  {
    id: 'brazier',
    title: 'Brazier, flexure of thin cylindrical shells, 1927',
    where: 'κ = √2 t / (3 r² √(1-ν²))',
    standing: 'from memory',
  },
  {
    id: 'nec:358.24',
    title: 'NFPA 70, National Electrical Code',
    where:
      '358.24 and chapter 9 table 2, least bend radius of conduit; the row of 1/2 in (4 in) seen in a public calculation',
    standing: 'published',
  },
  {
    id: 'nds:5.3.8',
    title: 'National Design Specification for Wood Construction',
    where: '5.3.8, lamination thickness over radius',
    standing: 'from memory',
  },
  {
    id: 'rigging',
    title: 'General rigging tables',
    where:
      'clips keep 80 % of the breaking load (TM 5-3810-305-10, table 4, terminal efficiencies); working factor 3, from memory',
    standing: 'from memory',
  },
  {
    id: 'cable-heat',
    title: 'Growth of steel wire in the heat',
    where: 'ΔT = E A α Δϑ with fixed ends (mechanics); α = 12e-6 per kelvin, handbook value',
    standing: 'from memory',
  },
  {
    id: 'practice',
    title: 'Common practice',
    where: 'trade fact',
    standing: 'common practice, no source',
  },
];

/** Every source a finding may name. */
export const sources: Readonly<Record<string, Source>> = {
  ...loadSources,
  ...Object.fromEntries(own.map((source) => [source.id, source])),
};
