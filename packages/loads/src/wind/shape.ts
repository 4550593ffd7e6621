/** What both standards read off a shelter's outline. */
import type { WindShape } from './wind-case.ts';

/** How much air gets in and out, which decides the pressure inside. */
export type Enclosure = 'enclosed' | 'partly open' | 'partly enclosed' | 'open';

export interface Outline {
  /** Roof pitch, or chord slope of an arch, degrees. */
  readonly pitch: number;
  readonly ridgeHeight: number;
  /** Mean roof height of ASCE: half way up the roof; the eave below 10° of pitch, where there is one. */
  readonly meanHeight: number;
  /** Area of one end, m2. */
  readonly endArea: number;
  /** Length of the roof line across, m. */
  readonly developed: number;
  readonly enclosure: Enclosure;
  /** Whether there are side walls that take wind. */
  readonly walls: boolean;
  /** Share of the wind pressure that screened walls take: 1 - (1 - solidity)^1.5, 1 for clad walls. */
  readonly wallShare: number;
  /** Something under an open roof stands in the way of the wind over more than half of the section. */
  readonly obstructed: boolean;
  /** How the wind may pass under an open roof: a crop is not always there, a screen is. */
  readonly flows: readonly Flow[];
  readonly notCovered: readonly string[];
}

/** ASCE 7 26.2: a building is open when each wall is at least 80 % open. */
const OPEN_SHARE = 0.8;

/** ASCE 7 figures 27.3-4 and 27.3-5, note 2: from half of the section on the flow is obstructed. */
const HALF_BLOCKED = 0.5;

/** How the wind passes under an open roof. */
export type Flow = 'clear' | 'obstructed';

/** Length of a circular arc of a span and rise, m. */
export function arcLength(span: number, rise: number): number {
  const radius = (span * span) / (8 * rise) + rise / 2;
  const half = Math.atan2(span / 2, radius - rise);
  return 2 * radius * half;
}

function arcArea(span: number, rise: number): number {
  const radius = (span * span) / (8 * rise) + rise / 2;
  const half = Math.atan2(span / 2, radius - rise);
  return radius * radius * (half - Math.sin(half) * Math.cos(half));
}

/** Reads the outline. Throws a RangeError when span, length or rise is not above zero. */
export function outlineOf(shape: WindShape): Outline {
  if (!(shape.span > 0 && shape.length > 0 && shape.rise > 0 && shape.springing >= 0)) {
    throw new RangeError('wind needs a span, length and rise above zero');
  }
  const run = shape.form === 'single-slope' ? shape.span : shape.span / 2;
  const pitch = (Math.atan2(shape.rise, run) * 180) / Math.PI;
  const slope = Math.hypot(run, shape.rise);
  const roofArea = shape.form === 'arch' ? arcArea(shape.span, shape.rise) : (shape.span * shape.rise) / 2;
  const notCovered: string[] = [];
  const walls = shape.springing > 0 && shape.sides !== 'open';
  const porosity = shape.sides === 'screened' ? (shape.sidePorosity ?? 0) : 0;
  const sidesOpen =
    shape.springing > 0 && (shape.sides === 'open' || (shape.sides === 'screened' && porosity >= OPEN_SHARE));
  const enclosure = enclosureOf(shape, sidesOpen);
  if (shape.sides === 'screened' && walls) {
    notCovered.push(
      'Screened sides: the standard has no coefficients for walls of mesh. The wall takes the share of a ' +
        'pierced free-standing wall, and the roof is checked both as closed and as open with the flow obstructed.',
    );
  }
  if (shape.ends === 'open' && !sidesOpen && !shape.oneSideOpen) {
    notCovered.push(
      'One end shut while the other stands open: the inside pressure is then up to three times what is used here.',
    );
  }
  const obstructed = shape.sides === 'screened' || (shape.blockage ?? 0) > HALF_BLOCKED;
  return {
    pitch,
    ridgeHeight: shape.springing + shape.rise,
    meanHeight:
      shape.form !== 'arch' && pitch < 10
        ? Math.max(shape.springing, shape.rise / 2)
        : shape.springing + shape.rise / 2,
    endArea: shape.span * shape.springing + roofArea,
    developed:
      shape.form === 'arch' ? arcLength(shape.span, shape.rise) : shape.form === 'gable' ? 2 * slope : slope,
    enclosure,
    walls,
    wallShare: shape.sides === 'screened' ? 1 - porosity ** 1.5 : 1,
    obstructed,
    flows: shape.sides === 'screened' ? ['obstructed'] : obstructed ? ['clear', 'obstructed'] : ['clear'],
    notCovered,
  };
}

function enclosureOf(shape: WindShape, sidesOpen: boolean): Enclosure {
  if (sidesOpen) return 'open';
  if (shape.oneSideOpen) return 'partly enclosed';
  const screened = shape.sides === 'screened' && shape.springing > 0;
  return shape.ends === 'open' || screened ? 'partly open' : 'enclosed';
}
