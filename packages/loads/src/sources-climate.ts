import type { Source } from './source.ts';

const FAO = 'FAO Irrigation and Drainage Paper 56, Crop evapotranspiration (1998)';

/** Water, heat, light and film. */
export const CLIMATE_SOURCES: readonly Source[] = [
  { id: 'fao56:6', title: FAO, where: 'eq. 6, Penman-Monteith', standing: 'published' },
  { id: 'fao56:40', title: FAO, where: 'eq. 38 to 40, net radiation', standing: 'published' },
  { id: 'fao56:58', title: FAO, where: 'eq. 58, single crop coefficient', standing: 'published' },
  { id: 'rational-method', title: 'Rational method', where: 'Q = C i A', standing: 'from memory' },
  { id: 'manning', title: "Manning's formula", where: 'Q = A R^(2/3) S^(1/2) / n', standing: 'published' },
  {
    id: 'en12056-3:5.1',
    title: 'EN 12056-3:2000, Roof drainage',
    where: '5.1, eaves gutters; table 6',
    standing: 'from memory',
  },
  {
    id: 'ashrae:natural-ventilation',
    title: 'ASHRAE Handbook, Fundamentals',
    where: 'ventilation: flow by wind and by stack',
    standing: 'from memory',
  },
  {
    id: 'ep406:balance',
    title: 'ASABE EP406, Heating, ventilating and cooling greenhouses',
    where: 'steady energy balance',
    standing: 'from memory',
  },
  {
    id: 'practice:film-creep',
    title: 'Polyethylene film under pull',
    where: 'shares of the yield stress by duration and heat',
    standing: 'common practice, no source',
  },
  {
    id: 'practice:mesh',
    title: 'Polyethylene mesh under pull',
    where: 'shares of the breaking pull by duration and heat',
    standing: 'common practice, no source',
  },
  {
    id: 'en13206:life',
    title: 'EN 13206, Thermoplastic covering films',
    where: 'life by radiation dose',
    standing: 'from memory',
  },
  {
    id: 'nielsen:1963',
    title: 'Thwaites (1961) and Nielsen (1963), two-dimensional sails',
    where: 'least tension coefficient 1.727',
    standing: 'from memory',
  },
];
