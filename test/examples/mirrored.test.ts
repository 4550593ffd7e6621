/** Whoever builds an arch from either side finds its purlins at the same height. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example, fromText } from './loaded.ts';

const names = readdirSync(new URL('../../examples/', import.meta.url))
  .filter((file) => file.endsWith('.shelter'))
  .map((file) => file.replace('.shelter', ''))
  .filter((name) => name !== 'site' && name !== 'yard');

describe('purlins', () => {
  it.each(names)('of %s lie mirrored over the middle', async (name) => {
    const { roof, purlins } = (await example(name)).shelter;
    const total = roof.line.at(-1)!.s;
    for (const { lines } of purlins) {
      const places = lines.map(({ s = Number.NaN }) => s).sort((a, b) => a - b);
      for (const [index, s] of places.entries())
        expect(s + places[places.length - 1 - index]!).toBeCloseTo(total, 6);
    }
  });
});

describe('up each side', () => {
  const house = (lines: string) => `import "site.shelter"
shelter house on gully-terrace {
  footprint 4 m by 9 m
  ${lines}
}`;

  it('puts a purlin and a joint so far from either foot of a bow', async () => {
    const { shelter } = await fromText(
      house(`bows spaced 1 m { of pvc40-25; length 7 m; joint socket-25 at 2 m up each side }
  purlins 4 of pvc40-20 { at 1 m up each side; at 2.5 m up each side }`),
    );
    if (shelter.roof.type !== 'bows') throw new Error('no bows');
    expect(shelter.roof.joints.map(({ at }) => at)).toEqual([2, 5]);
    expect(new Set(shelter.roof.joints.map(({ id }) => id)).size).toBe(2);
    const places = shelter.purlins[0]!.lines.map(({ s = Number.NaN }) => Number(s.toFixed(6)));
    expect(places).toEqual([1, 2.5, 4.5, 6]);
  });

  it('tells that two lines were placed where three are said', async () => {
    const { problems } = await fromText(
      house('bows spaced 1 m { of pvc40-25; length 6 m }\n  purlins 3 of pvc40-20 { at 1 m up each side }'),
    );
    expect(problems.map(({ message }) => message)).toContain(
      '3 purlins are said, and places for 2: change the number, or say a place for each',
    );
  });

  it('is one joint on each rafter of a pair', async () => {
    const { shelter } = await fromText(
      house('rafters spaced 1 m { of lumber-2x4; pitch 25 deg; joint plate-ply at 1 m up each side }'),
    );
    if (shelter.roof.type !== 'rafters') throw new Error('no rafters');
    expect(shelter.roof.joints.map(({ at }) => at)).toEqual([1]);
  });
});
