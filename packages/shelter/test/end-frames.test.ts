import { describe, expect, test } from 'vitest';
import { clearHeightAt, resolveShelter } from '../src/index.ts';
import { worldOf } from './reading.ts';

const stock = `
material plastic { family pvc; density 1400 kg/m3; modulus 2.8 GPa; creep-modulus 0.9 GPa; bending-strength 48 MPa; sustained-strength 14 MPa; shear-strength 20 MPa }
material wood { family timber; density 400 kg/m3; modulus 8 GPa; bending-strength 16 MPa }
pipe thin { outside 33 mm; wall 3.4 mm; material plastic; sold 10 m long }
lumber stick { depth 90 mm; breadth 40 mm; material wood; sold 5 m long }
site field { gust 40 m/s once per 50 yr }
`;

/** An arch 4 m wide, 10 m long and 2 m high at its crown. */
function read(body: string) {
  const { shelter, problems } = resolveShelter(
    'house',
    worldOf(
      stock,
      `shelter house on field {\nfootprint 4 m by 10 m\nbows spaced 2 m { of thin; shape arc; rise 2 m; foot driven }\n${body}\n}\n`,
    ),
  );
  return { shelter: shelter!, problems };
}

describe('end frames', () => {
  test('have their first uprights at the sides of the door, the rest spread between', () => {
    const { shelter, problems } = read(
      'end-frames of stick { uprights 4; rail of stick at 1.7 m }\nends clad { door 0.8 m by 1.7 m }',
    );
    expect(problems).toEqual([]);
    const ends = shelter.endFrames!;
    expect(ends.uprights.map(({ x }) => x.toFixed(6))).toEqual([
      '0.800000',
      '1.600000',
      '2.400000',
      '3.200000',
    ]);
    for (const { x, height } of ends.uprights) expect(height).toBe(clearHeightAt(shelter, x));
    // A circle of 2 m radius at 1.7 m: half its width is sqrt(4 - 1.7²) = 1.0536 m.
    expect(ends.rail!.to - ends.rail!.from).toBeCloseTo(2 * 1.0536, 2);
    expect(shelter.unmodelled).toEqual([]);
  });

  test('without a door stand evenly, and list what was taken', () => {
    const { shelter } = read('end-frames of stick');
    expect(shelter.endFrames!.uprights.map(({ x }) => x.toFixed(3))).toEqual(['1.333', '2.667']);
    expect(shelter.assumed.map(({ part, fact }) => `${part} ${fact}`)).toContain('end-frames uprights');
  });

  test('whose rail lies above the roof are a problem', () => {
    expect(read('end-frames of stick { rail of stick at 2.5 m }').problems).toMatchObject([
      { id: 'out-of-range' },
    ]);
  });
});

describe('doors', () => {
  test('stand in the middle of the front unless said otherwise', () => {
    const { shelter } = read(
      'ends clad { door 0.8 m by 1.6 m; door 0.8 m by 1.5 m at both-ends { from side 2.2 m } }',
    );
    expect(shelter.doors).toMatchObject([
      { id: 'door', left: 1.6, end: 'front' },
      { id: 'door-2', left: 2.2, end: 'both' },
    ]);
  });

  test('too high for the roof over their corners, beyond the side, or behind a post are said', () => {
    const low = read('ends clad { door 1.6 m by 1.9 m }').problems;
    expect(low).toMatchObject([{ id: 'door-place', severity: 'warning' }]);
    expect(low[0]!.message).toMatch(/1\.9 m high, but the roof or a tie over its corner is 1\.8\d m up/);
    expect(read('ends clad { door 1 m by 0.5 m { from side 3.5 m } }').problems[0]!.message).toContain(
      '0.5 m beyond',
    );
    const post = read(
      'ridge rail of stick { posts of stick spaced 2 m }\nends clad { door 0.8 m by 1.5 m }',
    ).problems;
    expect(post.map(({ message }) => message).join()).toMatch(
      /a post stands in the door, 2 m from the left side/,
    );
  });
});
