import { expect, test } from 'vitest';
import { resolveRange } from '../src/index.ts';
import { worldOf } from './reading.ts';

const text = `
material plastic { family pvc; density 1400 kg/m3; modulus 2.8 GPa; bending-strength 48 MPa }
pipe thin { outside 33 mm; wall 3.4 mm; material plastic; sold 20 ft long }
site field { gust 30 m/s }
shelter low on field { footprint 1.2 m by 15 m; bows spaced 1 m { of thin; shape arc; rise 0.8 m; foot poked } }
shelter wide on field { footprint 3 m by 15 m; bows spaced 1 m { of thin; shape arc; rise 1.5 m; foot poked } }
shelter bad on field { footprint 3 m by 15 m }
`;
const ranged = (body: string) => resolveRange('beds', worldOf(text, `range beds { ${body} }`));

test('shelters stand side by side, a gap apart', () => {
  const { range, problems } = ranged('stand 2 of low; stand 1 of wide; gap 0.5 m; tied by thin every 4 m');
  expect(problems).toEqual([]);
  expect(range!.places.map(({ shelter, x }) => [shelter.name, x])).toEqual([
    ['low', 0],
    ['low', 1.7],
    ['wide', 3.4],
  ]);
  expect(range!.width).toBeCloseTo(6.4, 12);
  expect(range!.tie).toMatchObject({ spacing: 4, member: { id: 'thin' } });
  expect(range!.unmodelled).toHaveLength(2);
  expect(range!.assumed.map((one) => one.part)).not.toContain('range');
});

test('a gap that is not said is assumed and listed', () => {
  expect(ranged('stand 2 of low').range!.assumed).toMatchObject([{ part: 'range', fact: 'gap', value: 0.6 }]);
});

test.each([
  ['gap 1 m', 'missing-fact'],
  ['stand 2 of nothing', 'unknown-name'],
  ['stand 2 of field', 'unknown-name'],
  ['stand 0 of low', 'out-of-range'],
  ['stand 10000 of low', 'out-of-range'],
  ['stand 2 of bad', 'no-roof'],
  ['stand 2 of low; gap -1 m', 'out-of-range'],
])('%s: %s', (body, id) => {
  const { range, problems } = ranged(body);
  expect(range).toBeUndefined();
  expect(problems.map((one) => one.id)).toContain(id);
});

test('stubs that lean out under the neighbour are said, and the gap that would do', () => {
  const arch =
    'footprint 2 m by 15 m; bows spaced 1 m { of thin; shape arc; rise 0.5 m; foot stub of bar { length 1.6 m; deep 0.8 m; lean 45 deg } }';
  const row = (gap: string) =>
    resolveRange(
      'beds',
      worldOf(
        text,
        `rod bar { across 12 mm; material plastic }\nshelter flat on field { ${arch} }\nrange beds { stand 3 of flat; gap ${gap} }`,
      ),
    ).problems.filter(({ id }) => id === 'stubs-meet');
  expect(row('0.6 m')).toHaveLength(1);
  expect(row('0.6 m')[0]!.message).toContain('0.8 m');
  expect(row('0.81 m')).toEqual([]);
});
