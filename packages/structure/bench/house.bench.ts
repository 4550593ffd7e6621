/**
 * The full tier on a house of 30 sprung bows with three lines of purlins: unknowns, time to lay the frame out (ordering
 * of the unknowns included), time of one linear answer (assembly, factorisation, solution and forces) and of one
 * combination with large movements. Warm medians.
 * Run: npx esbuild --bundle <this> --platform=node --format=esm | node --input-type=module
 */
import { performance } from 'node:perf_hooks';
import { linearSpaceFrame, solveSpaceFrame } from '@tautline/mechanics';
import { originOf, type Rail, type Shelter } from '@tautline/shelter';
import { buildHouse, conditionAt, houseLoads, houseSystem, layOnHouse } from '../src/index.ts';
import { pipe, pvc, sprungHouse } from '../test/fixtures.ts';

const BOWS = 30;

function house(): Shelter {
  const base = sprungHouse({ member: pipe('pipe', pvc, 0.0483, 0.0037, [9]) });
  const { roof } = base;
  if (roof.type !== 'bows' || roof.foot === undefined) throw new Error('bows');
  const { length, line, spacing } = roof;
  const lines = [0.3, 0.5, 0.7].map((share) => {
    const { s, x, y } = line.reduce((best, point) =>
      Math.abs(point.s - share * length) < Math.abs(best.s - share * length) ? point : best,
    );
    return { s, x, y };
  });
  const purlins: Rail = {
    id: 'purlins',
    origin: originOf('bench'),
    role: 'purlin',
    form: 'pipe',
    member: pipe('purlin', pvc, 0.0267, 0.0029, [6]),
    lines,
    span: spacing,
    tied: true,
  };
  return {
    ...base,
    length: (BOWS - 1) * spacing,
    roof: {
      ...roof,
      foot: { ...roof.foot, fixity: 'clamped' },
      stations: Array.from({ length: BOWS }, (_, k) => k * spacing),
    },
    purlins: [purlins],
  };
}

function median(times: number, work: () => void): number {
  const all = Array.from({ length: times }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  });
  return all.sort((a, b) => a - b)[times >> 1]!;
}

const shelter = house();
const { roof } = shelter;
if (roof.type !== 'bows') throw new Error('bows');
const build = () => houseSystem(shelter, roof, conditionAt(shelter.site, 'gust'));
const system = build();
const state = buildHouse(system);
const { loads, push } = houseLoads(shelter, system);
const load = loads.find((one) => one.wind !== undefined)!;
const laid = layOnHouse(system, load, push);
const start = state.result.state;
const modelling = median(5, build);
// A model seen for the first time is laid out and ordered; a second answer on it is not.
const first = median(5, () => linearSpaceFrame({ ...system.model }, laid, { start }));
const again = median(15, () => linearSpaceFrame(system.model, laid, { start }));
const combination = median(5, () => solveSpaceFrame(system.model, laid, { start, steps: 2 }));
const { iterations } = solveSpaceFrame(system.model, laid, { start, steps: 2 });
const ms = (value: number) => `${value.toFixed(1)} ms`;
console.log(
  `${BOWS} bows: ${state.result.unknowns} unknowns, ${state.result.entries} entries of the factor, ${state.status}`,
);
console.log(`model of the house ${ms(modelling)}; layout and ordering ${ms(first - again)}`);
console.log(`linear answer (assembly twice over, factorisation, solution, forces) ${ms(again)}`);
console.log(
  `${load.title}: ${ms(combination)} in ${iterations} corrections, ${ms(combination / iterations)} each`,
);
