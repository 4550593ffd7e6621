/** 3x3 matrices row by row in flat arrays, at an offset. */
export type Matrix = Float64Array;

/** Rotation matrix of a rotation vector (Rodrigues' formula). */
export function rotationOf(x: number, y: number, z: number): Matrix {
  const angle = Math.hypot(x, y, z);
  const a = angle < 1e-8 ? 1 : Math.sin(angle) / angle;
  const b = angle < 1e-8 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
  return Float64Array.of(
    1 - b * (y * y + z * z),
    b * x * y - a * z,
    b * x * z + a * y,
    b * x * y + a * z,
    1 - b * (x * x + z * z),
    b * y * z - a * x,
    b * x * z - a * y,
    b * y * z + a * x,
    1 - b * (x * x + y * y),
  );
}

/** Rotation vector of a rotation matrix by way of its quaternion; sound up to half a turn. */
export function vectorOf(R: Matrix, at = 0): [number, number, number] {
  const m = (k: number) => R[at + k]!;
  const trace = m(0) + m(4) + m(8);
  let w: number;
  let x: number;
  let y: number;
  let z: number;
  if (trace > 0) {
    const s = 2 * Math.sqrt(trace + 1);
    [w, x, y, z] = [s / 4, (m(7) - m(5)) / s, (m(2) - m(6)) / s, (m(3) - m(1)) / s];
  } else if (m(0) > m(4) && m(0) > m(8)) {
    const s = 2 * Math.sqrt(1 + m(0) - m(4) - m(8));
    [w, x, y, z] = [(m(7) - m(5)) / s, s / 4, (m(1) + m(3)) / s, (m(2) + m(6)) / s];
  } else if (m(4) > m(8)) {
    const s = 2 * Math.sqrt(1 + m(4) - m(0) - m(8));
    [w, x, y, z] = [(m(2) - m(6)) / s, (m(1) + m(3)) / s, s / 4, (m(5) + m(7)) / s];
  } else {
    const s = 2 * Math.sqrt(1 + m(8) - m(0) - m(4));
    [w, x, y, z] = [(m(3) - m(1)) / s, (m(2) + m(6)) / s, (m(5) + m(7)) / s, s / 4];
  }
  const sine = Math.hypot(x, y, z);
  const times = sine < 1e-12 ? 2 : (2 * Math.atan2(sine, w)) / sine;
  return [times * x, times * y, times * z];
}

/** into[at..] = A · into[at..] */
export function turnBy(A: Matrix, into: Matrix, at: number): void {
  for (let c = 0; c < 3; c++) {
    const [p, q, r] = [into[at + c]!, into[at + 3 + c]!, into[at + 6 + c]!];
    for (let row = 0; row < 3; row++)
      into[at + 3 * row + c] = A[3 * row]! * p + A[3 * row + 1]! * q + A[3 * row + 2]! * r;
  }
}
