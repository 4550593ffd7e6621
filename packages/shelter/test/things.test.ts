import { describe, expect, test } from 'vitest';
import { resolveShelter, type SpecWorld } from '../src/index.ts';
import { worldOf } from './reading.ts';

const stock = `
material plastic { family pvc; density 1400 kg/m3; modulus 2.8 GPa; creep-modulus 0.9 GPa; bending-strength 48 MPa; sustained-strength 14 MPa; shear-strength 20 MPa }
pipe thin { outside 33 mm; wall 3.4 mm; material plastic; sold 10 m long }
site field { gust 40 m/s once per 50 yr }
`;

/** An arch 4 m wide, 10 m long and 2 m high at its crown. */
const world = (body: string): SpecWorld =>
  worldOf(
    stock,
    `shelter house on field {\nfootprint 4 m by 10 m\nbows spaced 2 m { of thin; shape arc; rise 2 m; foot driven }\n${body}\n}\n`,
  );

const read = (body: string, units: 'metric' | 'us' = 'metric') => {
  const { shelter, problems } = resolveShelter('house', { ...world(body), written: units });
  return { things: shelter?.things ?? [], problems, assumed: shelter?.assumed ?? [] };
};
const facts = (body: string) => read(body).assumed.map(({ part, fact }) => `${part} ${fact}`);

describe('things under the roof', () => {
  test('stand where they are said to', () => {
    const { things, problems } = read(
      'tank 1.2 m by 2.4 m { name "spinach tank"; height 0.6 m; from side 0.5 m; starts at 1 m; clearance 0.5 m }',
    );
    expect(problems).toEqual([]);
    expect(things).toMatchObject([
      { id: 'tank', kind: 'tank', name: 'spinach tank', width: 1.2, length: 2.4, lefts: [0.5], starts: 1 },
    ]);
    expect(things[0]).toMatchObject({ height: 0.6, clearance: 0.5 });
  });

  test('are spread evenly, mirrored about the middle, where a count is said', () => {
    expect(read('bench 1 m by 8 m { count 2; from side 0.25 m }').things[0]!.lefts).toEqual([0.25, 2.75]);
    const spread = read('bed 0.8 m by 10 m { count 3 }').things[0]!;
    expect(spread.lefts.map((x) => x.toFixed(3))).toEqual(['0.400', '1.600', '2.800']);
    expect(read('bed 1 m by 10 m').things[0]!.lefts).toEqual([1.5]);
  });

  test('list what was taken for them', () => {
    expect(facts('bench 1 m by 8 m')).toEqual(
      expect.arrayContaining(['bench starts', 'bench from', 'bench height', 'bench clearance']),
    );
    expect(facts('obstacle { name "standpipe"; height 1 m; from side 0.3 m }')).toContain('obstacle size');
  });

  test('are told apart when there are several of a kind', () => {
    const { things } = read('bed 1 m by 4 m { starts at 0 m }\nbed 1 m by 4 m { starts at 5 m }');
    expect(things.map(({ id }) => id)).toEqual(['bed', 'bed-2']);
  });

  test('need a size, unless they are a small obstacle', () => {
    expect(read('bench { height 0.8 m }').problems).toMatchObject([{ id: 'missing-fact' }]);
  });

  test('that reach outside the footprint are said, by how much and what would do', () => {
    const [wide] = read('bench 1 m by 8 m { from side 3.5 m }').problems;
    expect(wide).toMatchObject({ id: 'outside', severity: 'warning' });
    expect(wide!.message).toContain('0.5 m beyond the right side');
    expect(wide!.message).toContain('3 m from the left side at most');
    expect(read('bench 1 m by 8 m { starts at 4 m }').problems[0]!.message).toContain('2 m beyond the end');
    expect(read('bench 3 m by 8 m { count 2; from side 0 m }').problems[0]!.message).toContain(
      '2 m too wide',
    );
  });

  test('taller than the roof over them are said, in the units of the file', () => {
    // 0.4 m from the side an arch of 2 m radius stands sqrt(2^2 - 1.6^2) = 1.2 m high.
    const metric = read('tank 0.8 m by 2 m { height 1.5 m; from side 0.4 m }').problems;
    expect(metric).toMatchObject([{ id: 'too-tall', severity: 'warning' }]);
    expect(metric[0]!.message).toMatch(
      /1\.5 m high, but the roof or a tie over it comes down to 1\.1\d m at 0\.4 m/,
    );
    const us = read('tank 0.8 m by 2 m { height 1.5 m; from side 0.4 m }', 'us').problems;
    expect(us[0]!.message).toMatch(/4 ft 11-1\/16 in high/);
    expect(read('tank 0.8 m by 2 m { height 1.1 m; from side 0.4 m }').problems).toEqual([]);
  });
});
