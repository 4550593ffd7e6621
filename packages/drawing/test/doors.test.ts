import { describe, expect, it } from 'vitest';
import { scene3d } from '../src/index.ts';
import { shelters } from './fixtures/shelters.ts';

const withDoors = shelters.filter(({ doors }) => (doors ?? []).length > 0);

describe('doors in space', () => {
  it.each(withDoors)('stand ajar outside the end they close, within their opening: $name', (shelter) => {
    const scene = scene3d(shelter);
    for (const door of shelter.doors ?? []) {
      const leaves = scene.surfaces.filter(({ part }) => part === door.id);
      expect(leaves).toHaveLength(door.end === 'both' ? 2 : 1);
      for (const { positions } of leaves) {
        const [hx = 0, , hz = 0, fx = 0, , fz = 0] = positions;
        const wide = Math.hypot(fx - hx, fz - hz);
        expect(wide).toBeLessThan(door.width);
        expect(wide).toBeGreaterThan(0.7 * door.width);
        // The free side stands out of the house: before the front, or beyond the back.
        expect(fz < 0 || fz > shelter.length).toBe(true);
        expect(Math.abs(fz - hz)).toBeGreaterThan(0.5 * wide);
        const heights = positions.filter((_, i) => i % 3 === 1);
        expect(Math.max(...heights)).toBeLessThan(door.height);
      }
      const bars = scene.segments.filter(({ part }) => part === door.id);
      // Two stiles, three ledges, a brace, a handle on two stays, and two hinges to each leaf at least.
      expect(bars.length).toBeGreaterThanOrEqual(11 * leaves.length);
    }
  });
});
