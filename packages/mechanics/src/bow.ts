/** What an elastic bow is asked by: two of the three lengths, in m. */
export interface BowGiven {
  readonly span?: number | undefined;
  readonly rise?: number | undefined;
  readonly length?: number | undefined;
  /** how many points of the line to return, ends included; default 33 */
  readonly points?: number | undefined;
}

/** One point of a bow's line, from the left foot (s = 0, x = 0, y = 0). */
export interface BowPoint {
  /** length along the bow from the left foot, m */
  readonly s: number;
  readonly x: number;
  readonly y: number;
  /** tangent against the horizontal, rad: positive where the line climbs to the right */
  readonly angle: number;
  /** 1/m, positive where the bow arches (concave downwards), that is -d(angle)/ds */
  readonly curvature: number;
}

/** The solved line of an elastic bow. Forces are divided by EI: multiply by E·I for N and N·m. */
export interface Bow {
  readonly ok: true;
  readonly span: number;
  readonly rise: number;
  readonly length: number;
  /** tangent at the left foot against the horizontal, rad */
  readonly endAngle: number;
  /** largest curvature in size, 1/m */
  readonly maxCurvature: number;
  /** where along the bow it is, m (the crown, unless a stub bends it harder) */
  readonly maxCurvatureAt: number;
  /** horizontal push of the left foot towards the right, over EI, 1/m2. Negative: the feet must be held in. */
  readonly thrustOverEI: number;
  /** vertical push of the left foot upwards, over EI, 1/m2 */
  readonly liftOverEI: number;
  /** moment at the left foot over EI, 1/m: the curvature there */
  readonly endMomentOverEI: number;
  /** push of a crown support upwards, over EI, 1/m2; zero when none holds it, negative when it must pull */
  readonly contactForceOverEI: number;
  readonly line: readonly BowPoint[];
}
