/** Small shelters built by hand for the tests of this package. SI units. */
import { pinnedBow } from '@tautline/mechanics';
import {
  type Bows,
  type Cover,
  type FilmItem,
  type Foot,
  type Material,
  type MemberItem,
  originOf,
  type Rail,
  type Shelter,
  type Site,
} from '@tautline/shelter';

const origin = originOf('test');

export const foot = (inches: number): number => inches * 0.0254;
const feet = (value: number): number => value * 0.3048;

export const pvc: Material = {
  id: 'pvc',
  title: 'PVC',
  family: 'pvc',
  source: 'test',
  origin,
  density: 1400,
  modulus: 2.76e9,
  longTermModulus: 0.97e9,
  bendingStrength: 48e6,
  sustainedStrength: 13.8e6,
  shearStrength: 28e6,
};

export const steel: Material = {
  ...pvc,
  id: 'steel',
  title: 'steel',
  family: 'steel',
  density: 7850,
  modulus: 200e9,
  longTermModulus: 200e9,
  bendingStrength: 250e6,
  sustainedStrength: 250e6,
  shearStrength: 145e6,
};

export function pipe(
  id: string,
  material: Material,
  outside: number,
  wall: number,
  stockLengths: number[],
): MemberItem {
  return {
    kind: 'pipe',
    id,
    title: id,
    source: 'test',
    origin,
    prices: [],
    section: { shape: 'round-hollow', outside, wall },
    material,
    stockLengths,
  };
}

export const pvcOneInch = pipe('pvc40-25', pvc, foot(1.315), foot(0.133), [3.048, 6.096]);
export const ridgePipe = pipe('gal-50', steel, foot(2.375), foot(0.154), [6.4]);

export const film: FilmItem = {
  kind: 'film',
  id: 'film-uv-150',
  title: 'greenhouse film',
  source: 'test',
  origin,
  prices: [],
  thickness: 150e-6,
  density: 925,
  grade: 'greenhouse',
  life: 4 * 365.25 * 86400,
  yieldStress: 12e6,
  modulus: 200e6,
  expansion: 1.8e-4,
  light: 0.88,
  rollWidths: [7.3, 9.75],
  rollLengths: [30.5],
};

export const site: Site = {
  id: 'terrace',
  origin,
  gust: 25,
  gustReturnPeriod: 50,
  exposure: 'sheltered',
  elevation: 480,
  topography: 1,
  groundSnow: 0,
  rain: 3e-5,
  soil: 'loam',
  soaked: true,
  coldest: 5,
  hottest: 30,
  latitude: -0.45,
  basis: 'asce7-asd',
  lowHazard: true,
};

const stub: Foot = { id: 'bows/foot', origin, kind: 'stub', driven: 0.6, fixity: 'pinned' };

export const postStock: MemberItem = {
  kind: 'lumber',
  id: 'lumber-4x4',
  title: 'post 4x4',
  source: 'test',
  origin,
  prices: [],
  section: { shape: 'rectangle', depth: foot(3.5), breadth: foot(3.5) },
  material: {
    ...pvc,
    id: 'pine',
    family: 'timber',
    density: 550,
    modulus: 8e9,
    longTermModulus: 8e9,
    bendingStrength: 24e6,
  },
  stockLengths: [2.4, 3, 3.6],
};

/** A pipe sprung into an arch, pinned at its feet. */
export function sprungHouse(
  options: {
    span?: number;
    rise?: number;
    member?: MemberItem;
    spacing?: number;
    ridge?: Rail;
    tension?: number;
  } = {},
): Shelter {
  const span = options.span ?? feet(14);
  const rise = options.rise ?? feet(7.5);
  const spacing = options.spacing ?? feet(4);
  const bow = pinnedBow({ span, rise, points: 129 });
  if (!bow.ok) throw new Error(bow.reason);
  const bows: Bows = {
    type: 'bows',
    id: 'bows',
    origin,
    member: options.member ?? pvcOneInch,
    shape: 'elastic',
    spacing,
    stations: [0, spacing, 2 * spacing],
    span,
    rise,
    length: bow.length,
    sizedBy: 'rise',
    springing: 0,
    leg: 0,
    legDriven: 0,
    line: bow.line,
    joints: [],
    foot: stub,
    wrapped: false,
  };
  const cover: Cover = {
    id: 'cover-roof',
    origin,
    place: 'roof',
    skin: film,
    layers: 1,
    developedWidth: bow.length + 0.4,
    developedLength: 3 * spacing,
    from: 0,
    upTo: rise,
    tension: options.tension ?? 150,
    fittedAt: 20,
  };
  return {
    id: 'house',
    origin,
    name: 'house',
    site,
    width: span,
    length: 2 * spacing,
    orientation: 0,
    roof: bows,
    purlins: [],
    braces: [],
    covers: [cover],
    crops: [],
    things: [],
    requirements: [],
    acceptances: [],
    opening: { ends: 'open', sides: 'clad' },
    assumed: [],
    unmodelled: [],
    ...(options.ridge === undefined ? {} : { ridge: options.ridge }),
  };
}

/** A pipe ridge under the crown on timber posts a given distance apart. */
export function pipeRidge(rise: number, span: number, tied = true): Rail {
  const postFoot: Foot = {
    id: 'ridge/posts/foot',
    origin,
    kind: 'hole',
    driven: 1,
    across: 0.25,
    fixity: 'clamped',
  };
  return {
    id: 'ridge',
    origin,
    role: 'ridge',
    form: 'pipe',
    member: ridgePipe,
    lines: [{ x: feet(7), y: rise }],
    span,
    tied,
    posts: {
      id: 'ridge/posts',
      origin,
      member: postStock,
      where: 'centre',
      lines: [feet(7)],
      spacing: span,
      stations: [0, span],
      height: rise,
      foot: postFoot,
    },
  };
}
