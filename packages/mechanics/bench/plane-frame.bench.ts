/**
 * Warm and cold time of the live tier's plane frame: 12 load combinations on one sprung bow of 32 elements,
 * each from the locked-in state. Run: npx esbuild --bundle <this> --platform=node --format=esm | node --input-type=module
 */
import { performance } from 'node:perf_hooks';
import { type PlaneLoads, type PlaneModel, pinnedBow, roundHollow, solvePlaneFrame } from '../src/index.ts';

const MEMBERS = 32;
const COMBINATIONS = 12;
const TARGET = 3;
const AIM = 1.5;

function sprungBow(): PlaneModel {
  const section = roundHollow(0.0334, 0.00338);
  const E = 2.76e9;
  const bow = pinnedBow({ span: 4.2, length: 6.1, points: MEMBERS + 1 });
  if (!bow.ok) throw new Error(bow.reason);
  return {
    nodes: bow.line.map(({ x, y, angle }) => ({ x, y, angle })),
    elements: Array.from({ length: MEMBERS }, (_, i) => ({
      i,
      j: i + 1,
      EA: E * section.area,
      EI: E * section.secondMoment,
      restLength: 6.1 / MEMBERS,
      restCurvature: 0,
    })),
    supports: [0, MEMBERS].flatMap((node) => [
      { node, dof: 'x', kind: 'fixed' } as const,
      { node, dof: 'y', kind: 'fixed' } as const,
      { node, dof: 'r', kind: 'spring', stiffness: 40 } as const,
    ]),
  };
}

const combination = (k: number): PlaneLoads => ({
  line: Array.from({ length: MEMBERS }, (_, element) => ({
    element,
    wx: 4 * Math.sin(k),
    wy: -6 - 3 * Math.cos(k + (k % 3) * (element / MEMBERS)),
  })),
  pressure: Array.from({ length: MEMBERS }, (_, element) => ({
    element,
    p: 8 * Math.sin(k + (3 * element) / MEMBERS),
  })),
});

const cases = Array.from({ length: COMBINATIONS }, (_, k) => combination(k));

function once(): { ms: number; iterations: number; converged: number } {
  const model = sprungBow();
  const began = performance.now();
  const locked = solvePlaneFrame(model, {});
  let iterations = 0;
  let converged = 0;
  for (const loads of cases) {
    const result = solvePlaneFrame(model, loads, { start: locked.state });
    iterations += result.iterations;
    if (result.status === 'converged') converged++;
  }
  return { ms: performance.now() - began, iterations, converged };
}

const cold = once();
for (let n = 0; n < 200; n++) once();
const times = Array.from({ length: 101 }, () => once().ms).sort((a, b) => a - b);
const median = times[50]!;
console.log(
  `plane frame, ${COMBINATIONS} combinations x ${MEMBERS} elements, locked-in state included: ` +
    `warm median ${median.toFixed(2)} ms, cold ${cold.ms.toFixed(1)} ms, ${cold.iterations} Newton iterations, ` +
    `${cold.converged} of ${COMBINATIONS} converged (target ${TARGET} ms, aim ${AIM} ms)`,
);
if (median > TARGET) process.exitCode = 1;
