/** Numbers that no shelter has: any of them ends in problems or findings, never in an exception, NaN or a hang. */

import { readFileSync } from 'node:fs';
import { type EvaluateOptions, type Evaluation, evaluate, messageText } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import type { StageClock } from '@tautline/structure';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { folder, names, textOf } from './fixture.ts';

/** Zero, less than nothing, no number at all for a machine, and sizes of hairs and mountains. */
const absurd = [
  '0',
  '-1',
  '0.0000001',
  '1e-9',
  '0.001',
  '1000',
  '10000',
  '1e9',
  '1e999',
  '-1e999',
  '0.5',
  '3',
  '40',
];
const specs = names.filter((name) => name !== 'site.shelter' && name !== 'yard.shelter');
/** Where a number stands that a unit or a count follows; dates are left alone. */
const number = /(?<![\w.-])\d+(?:\.\d+)?(?![\w.-]*\d|-)/g;

/** Seconds for each stage, as the command line and the editor have them, but fewer. */
const clock: StageClock = {
  now: () => performance.now() / 1000,
  budget: { form: 3, plane: 5, ponding: 5, gusts: 8, 'whole-house': 8 },
};

async function judge(
  text: string,
  file: string,
  options: EvaluateOptions,
): Promise<{ problems: number; evaluations: Evaluation[] }> {
  const uri = `file://${folder}${file}`;
  const workspace = await loadWorkspace([{ uri, text }], (path) => readFileSync(new URL(path), 'utf8'));
  let problems = workspace.problems.length;
  const evaluations = workspace.shelters.flatMap((loaded) => {
    if (loaded.kind === 'range') return [];
    const { shelter, problems: found } = resolveShelter(loaded.name, loaded.world);
    problems += found.length;
    return shelter === undefined ? [] : [evaluate(shelter, { on: '2026-11-25', clock, ...options })];
  });
  return { problems, evaluations };
}

/** Every number in what is shown is one. */
function allNumbers({ findings }: Evaluation): void {
  for (const finding of findings) {
    expect(messageText(finding.message, 'us')).not.toMatch(/NaN|Infinity|undefined/);
    for (const one of [finding.demand, finding.capacity, ...finding.steps])
      if (one !== undefined)
        expect(Number.isFinite(one.value), `${finding.id} ${JSON.stringify(one)}`).toBe(true);
  }
}

/** Changes one number of an example after the other and judges what comes of it. */
const judgeAbsurd = (options: EvaluateOptions, runs: number) =>
  fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...specs),
      fc.nat(),
      fc.constantFrom(...absurd),
      async (name, at, value) => {
        const text = textOf(name);
        const places = [...text.matchAll(number)].filter(
          ({ index }) => text.lastIndexOf('//', index) < text.lastIndexOf('\n', index),
        );
        const place = places[at % places.length]!;
        const changed = text.slice(0, place.index) + value + text.slice(place.index + place[0].length);
        const line = changed.slice(changed.lastIndexOf('\n', place.index) + 1).split('\n')[0];
        const started = performance.now();
        try {
          const { evaluations } = await judge(changed, name, options);
          for (const evaluation of evaluations) allNumbers(evaluation);
        } catch (error) {
          throw new Error(`${name}: ${line?.trim()}: ${error instanceof Error ? error.stack : error}`);
        }
        // A hang, not a pace: every stage has a budget of some seconds.
        expect(performance.now() - started, `${name}: ${line}`).toBeLessThan(60_000);
      },
    ),
    {
      numRuns: Number(process.env['FUZZ_RUNS'] ?? runs),
      seed: Number(process.env['FUZZ_SEED'] ?? 20261125),
      interruptAfterTimeLimit: Number(process.env['FUZZ_MS'] ?? 8000),
      markInterruptAsFailure: false,
      endOnFailure: true,
    },
  );

it('a number of any example changed to an absurd one', () => judgeAbsurd({ gusts: false }, 25), 400_000);

it(
  'the same with the whole house in space, giving ground, a person and the gusts',
  () => judgeAbsurd({ tier: 'full', soil: true, person: true }, 6),
  900_000,
);
