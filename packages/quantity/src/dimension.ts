/**
 * Dimensions as whole exponents. Angle, temperature and money are bases of their own: it costs nothing,
 * and it catches `rise 25 deg` where a length belongs.
 */

export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly angle: number;
  readonly money: number;
}

export const NONE: Dimension = {
  length: 0,
  mass: 0,
  time: 0,
  temperature: 0,
  angle: 0,
  money: 0,
};

const bases = ['length', 'mass', 'time', 'temperature', 'angle', 'money'] as const;

/** `dimension({ length: 1, time: -1 })` is that of a speed. */
export const dimension = (exponents: Partial<Dimension>): Dimension => ({
  ...NONE,
  ...exponents,
});

export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  bases.every((base) => a[base] === b[base]);

function combine(a: Dimension, b: Dimension, times: number): Dimension {
  return {
    length: a.length + times * b.length,
    mass: a.mass + times * b.mass,
    time: a.time + times * b.time,
    temperature: a.temperature + times * b.temperature,
    angle: a.angle + times * b.angle,
    money: a.money + times * b.money,
  };
}

export const productDimension = (a: Dimension, b: Dimension): Dimension => combine(a, b, 1);
export const quotientDimension = (a: Dimension, b: Dimension): Dimension => combine(a, b, -1);
export const powerDimension = (a: Dimension, power: number): Dimension => combine(NONE, a, power);
