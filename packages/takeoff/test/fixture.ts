/** Small shelters made by hand. All of it is invented: items, sizes, prices. */
import {
  type Bows,
  type CableItem,
  type Cover,
  type FasteningItem,
  type FilmItem,
  type Foot,
  type JointItem,
  type Material,
  type MemberItem,
  originOf,
  type Rafters,
  type Rail,
  type SheetItem,
  type Shelter,
  type Site,
  type SupplyItem,
} from '@tautline/shelter';

export const origin = originOf('fixture');
const base = (id: string) => ({ id, title: id, source: 'made up', origin, prices: [] });

const material: Material = {
  ...base('stuff'),
  family: 'other',
  density: 1000,
  modulus: 1e9,
  longTermModulus: 1e9,
  bendingStrength: 1e7,
  sustainedStrength: 1e6,
  shearStrength: 1e7,
};

export const per = (amount: number, unit: 'length' | 'area' | 'piece' | 'pack' | 'volume', value = 1) => ({
  amount,
  per: { unit, value },
  origin,
});

export const pvc: MemberItem = {
  ...base('pvc'),
  kind: 'pipe',
  section: { shape: 'round-hollow', outside: 0.034, wall: 0.004 },
  material,
  stockLengths: [3, 6],
  prices: [per(9, 'length', 6), per(5, 'length', 3)],
};
export const rebar: MemberItem = {
  ...base('rebar'),
  kind: 'rod',
  section: { shape: 'round-solid', outside: 0.012 },
  material,
  stockLengths: [6],
  prices: [per(6, 'piece')],
};
export const topRail: MemberItem = {
  ...base('top-rail'),
  kind: 'pipe',
  section: { shape: 'round-hollow', outside: 0.035, wall: 0.0015 },
  material,
  stockLengths: [6.4],
  swage: 0.1,
};
export const board: MemberItem = {
  ...base('board'),
  kind: 'lumber',
  section: { shape: 'rectangle', depth: 0.09, breadth: 0.045 },
  material,
  stockLengths: [4.8],
  prices: [per(2, 'length', 1)],
};
export const supply = (id: string, form: SupplyItem['form'], more: Partial<SupplyItem> = {}): SupplyItem => ({
  ...base(id),
  kind: 'supply',
  form,
  ...more,
});
export const cable: CableItem = {
  ...base('cable'),
  kind: 'cable',
  diameter: 0.005,
  breakingLoad: 15000,
  modulus: 1e11,
  area: 1e-5,
  massPerLength: 0.1,
  prices: [per(50, 'length', 100)],
};
export const film: FilmItem = {
  ...base('film'),
  kind: 'film',
  thickness: 2e-4,
  density: 920,
  grade: 'greenhouse',
  life: 4 * 365.25 * 86400,
  yieldStress: 1e7,
  modulus: 2e8,
  expansion: 2e-4,
  light: 0.88,
  rollWidths: [4, 7],
  rollLengths: [20, 50],
  prices: [per(1, 'area')],
};
export const sheet: SheetItem = {
  ...base('sheet'),
  kind: 'sheet',
  massPerArea: 1.5,
  thickness: 0.001,
  coverWidth: 0.8,
  stockLengths: [2.4, 3.6],
  greatestSpan: 0.7,
  light: 0.85,
  life: 10 * 365.25 * 86400,
};
export const joint = (id: string, form: JointItem['form'], insertion = 0.05): JointItem => ({
  ...base(id),
  kind: 'coupler',
  form,
  momentCapacity: 10,
  pullCapacity: 100,
  insertion,
  prices: [per(1.5, 'piece')],
});
export const fastening = (
  id: string,
  form: FasteningItem['form'],
  stockLengths: readonly number[],
): FasteningItem => ({
  ...base(id),
  kind: 'fastening',
  form,
  holds: 100,
  per: 'length',
  stockLengths,
  edgeAllowance: 0.1,
});

export const foot = (kind: Foot['kind'], driven: number, more: Partial<Foot> = {}): Foot => ({
  id: 'foot',
  origin,
  kind,
  driven,
  fixity: 'clamped',
  ...more,
});

/** `n` places along the house, evenly. */
export const places = (length: number, bays: number): readonly number[] =>
  Array.from({ length: bays + 1 }, (_, index) => (length * index) / bays);

/** A bow that is a triangle of two straight halves: easy to measure by hand. 3-4-5: 6 wide, 4 high, 10 long. */
export const bows = (more: Partial<Bows> = {}): Bows => ({
  id: 'bows',
  origin,
  type: 'bows',
  member: pvc,
  shape: 'arc',
  spacing: 1.2,
  stations: places(12, 10),
  span: 6,
  rise: 4,
  length: 10,
  springing: 0,
  leg: 0,
  legDriven: 0,
  line: [
    { s: 0, x: 0, y: 0, angle: 0.93, curvature: 0 },
    { s: 5, x: 3, y: 4, angle: 0, curvature: 0 },
    { s: 10, x: 6, y: 0, angle: -0.93, curvature: 0 },
  ],
  joints: [],
  wrapped: false,
  ...more,
});

export const rafters = (more: Partial<Rafters> = {}): Rafters => ({
  id: 'rafters',
  origin,
  type: 'rafters',
  form: 'gable',
  member: board,
  spacing: 2,
  stations: places(12, 6),
  span: 6,
  rise: 4,
  camber: 0,
  overhang: 0.2,
  springing: 2,
  length: 5.2,
  line: [
    { s: 0, x: 0, y: 2, angle: 0.93, curvature: 0 },
    { s: 5, x: 3, y: 6, angle: 0, curvature: 0 },
    { s: 10, x: 6, y: 2, angle: -0.93, curvature: 0 },
  ],
  joints: [],
  wrapped: false,
  ...more,
});

export const rail = (more: Partial<Rail> = {}): Rail => ({
  id: 'ridge',
  origin,
  role: 'ridge',
  form: 'rail',
  member: topRail,
  lines: [{ x: 3, y: 4 }],
  span: 2.4,
  tied: true,
  ...more,
});

export const cover = (more: Partial<Cover> = {}): Cover => ({
  id: 'cover-roof',
  origin,
  place: 'roof',
  skin: film,
  layers: 1,
  developedWidth: 6.5,
  developedLength: 13,
  from: 0,
  upTo: 0,
  tension: 150,
  fittedAt: 20,
  ...more,
});

const site: Site = {
  id: 'terrace',
  origin,
  gust: 40,
  gustReturnPeriod: 50,
  exposure: 'open',
  elevation: 480,
  topography: 1,
  groundSnow: 0,
  rain: 3e-5,
  soil: 'loam',
  soaked: true,
  coldest: 5,
  hottest: 50,
  latitude: -0.5,
  basis: 'asce7-asd',
  lowHazard: true,
};

export const shelter = (more: Partial<Shelter> = {}): Shelter => ({
  id: 'house',
  origin,
  name: 'house',
  site,
  width: 6,
  length: 12,
  orientation: 0,
  roof: bows(),
  purlins: [],
  braces: [],
  covers: [],
  crops: [],
  things: [],
  requirements: [],
  acceptances: [],
  opening: { ends: 'open', sides: 'open' },
  assumed: [],
  unmodelled: [],
  ...more,
});
