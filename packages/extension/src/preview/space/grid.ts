import type { Scene3d } from '@tautline/drawing';
import { BufferGeometry, Float32BufferAttribute, LineBasicMaterial, LineSegments } from 'three';
import type { Colours } from './colours.ts';

/** Squares of `step` metres on the ground, one square wider than the house: they give the eye a scale. */
export function gridOf({ low, high }: Scene3d, step: number, { ground }: Colours): LineSegments {
  const from = (value: number): number => Math.floor(value / step) - 1;
  const to = (value: number): number => Math.ceil(value / step) + 1;
  const [x1, x2, z1, z2] = [from(low[0]), to(high[0]), from(low[2]), to(high[2])];
  const points: number[] = [];
  for (let x = x1; x <= x2; x += 1) {
    points.push(x * step, 0, z1 * step, x * step, 0, z2 * step);
  }
  for (let z = z1; z <= z2; z += 1) {
    points.push(x1 * step, 0, z * step, x2 * step, 0, z * step);
  }
  const geometry = new BufferGeometry().setAttribute('position', new Float32BufferAttribute(points, 3));
  return new LineSegments(
    geometry,
    new LineBasicMaterial({ color: ground, transparent: true, opacity: 0.28 }),
  );
}
