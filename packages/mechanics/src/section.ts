/**
 * Properties of a cross-section about its bending axis. SI.
 * Formulas are the plain integrals over the shape; each is derived where it stands.
 */
export interface Section {
  /** m2 */
  readonly area: number;
  /** I, m4 */
  readonly secondMoment: number;
  /** distance from the neutral axis to the farthest fibre, m */
  readonly extremeFibre: number;
  /** I / extreme fibre, m3 */
  readonly sectionModulus: number;
  /** first moment of the two halves about the axis, m3 */
  readonly plasticModulus: number;
  /** sqrt(I / A), m */
  readonly gyration: number;
}

const section = (
  area: number,
  secondMoment: number,
  extremeFibre: number,
  plasticModulus: number,
): Section => ({
  area,
  secondMoment,
  extremeFibre,
  sectionModulus: secondMoment / extremeFibre,
  plasticModulus,
  gyration: Math.sqrt(secondMoment / area),
});

const asked = (name: string, value: number): number => {
  if (!(Number.isFinite(value) && value > 0))
    throw new RangeError(`${name} must be above zero, got ${value}`);
  return value;
};

/**
 * Round tube. `outside` is its outside diameter, `wall` its wall thickness, both in m.
 * A wall of half the diameter or more has no bore: RangeError, as for any length not above zero.
 */
export function roundHollow(outside: number, wall: number): Section {
  asked('outside diameter', outside);
  asked('wall', wall);
  if (2 * wall >= outside) throw new RangeError('the wall is thicker than half the outside diameter');
  const bore = outside - 2 * wall;
  return section(
    (Math.PI / 4) * (outside ** 2 - bore ** 2),
    (Math.PI / 64) * (outside ** 4 - bore ** 4),
    outside / 2,
    (outside ** 3 - bore ** 3) / 6,
  );
}

/** Round bar or pole of diameter `diameter`, m. RangeError when it is not above zero. */
export function roundSolid(diameter: number): Section {
  asked('diameter', diameter);
  return section(
    (Math.PI / 4) * diameter ** 2,
    (Math.PI / 64) * diameter ** 4,
    diameter / 2,
    diameter ** 3 / 6,
  );
}

/** Rectangle, bent so that `depth` lies in the plane of bending and `breadth` across it, m. */
export function rectangle(depth: number, breadth: number): Section {
  asked('depth', depth);
  asked('breadth', breadth);
  return section(depth * breadth, (breadth * depth ** 3) / 12, depth / 2, (breadth * depth ** 2) / 4);
}

/**
 * A strip of corrugated sheet 1 m wide whose middle line is a sine wave, bent along its waves; `depth` is measured
 * outside to outside, `pitch` from wave to wave, m. With the half depth a of the middle line and k = 2 π a / pitch:
 * I = t a² ∫ sin² √(1 + k² cos²), the mean over a quarter wave by Simpson's rule, and
 * t³/24 for the wall itself, which leans. RangeError when the waves are no deeper than the sheet is thick.
 */
export function corrugated(thickness: number, depth: number, pitch: number): Section {
  asked('thickness', thickness);
  asked('pitch', pitch);
  asked('depth of the waves beyond the thickness', depth - thickness);
  const a = (depth - thickness) / 2;
  const k = (2 * Math.PI * a) / pitch;
  const steps = 32;
  let way = 0;
  let square = 0;
  let first = 0;
  for (let n = 0; n <= steps; n++) {
    const weight = (n === 0 || n === steps ? 1 : n % 2 === 1 ? 4 : 2) / (3 * steps);
    const angle = (Math.PI / 2) * (n / steps);
    const stretch = Math.sqrt(1 + (k * Math.cos(angle)) ** 2);
    way += weight * stretch;
    square += weight * stretch * Math.sin(angle) ** 2;
    first += weight * stretch * Math.sin(angle);
  }
  const secondMoment = thickness * a ** 2 * square + thickness ** 3 / 24;
  return section(thickness * way, secondMoment, depth / 2, thickness * a * first);
}
