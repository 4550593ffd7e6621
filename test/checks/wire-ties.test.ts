/** Ties of wire are judged by their pull in the typical frame, and have a place in the order of failure. */
import { evaluate, exampleSpecs, fixesFor } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { newNotes, resolveItems, resolveShelter } from '@tautline/shelter';
import { expect, it } from 'vitest';

it('a tie of wire fails by its pull, gets stouter wire, and is ranked', async () => {
  const text = exampleSpecs('flat-crown')!
    .bad.replace('ties of lumber-2x4 { height 7 ft', 'ties of wire-2-5 { height 7 ft')
    .replace(/gust \d+ m\/s/, 'gust 40 m/s');
  const { shelters } = await loadWorkspace([{ uri: 'file:///ties.shelter', text }]);
  const { name, world } = shelters[0]!;
  const { shelter } = resolveShelter(name, world);
  const evaluation = evaluate(shelter!);
  const tie = evaluation.findings.find(({ id }) => id === 'tie-buckling')!;
  // The greatest pull of the frame, against 80 % of the breaking load over 3 (the working load of wire with clips).
  const pulls = evaluation
    .analysis!.responses.filter(({ load, status }) => load.use !== 'service' && status === 'holds')
    .flatMap(({ forces }) => forces.filter(({ part }) => part === 'ties').map(({ axial }) => axial));
  expect(tie.demand?.value).toBeCloseTo(Math.max(...pulls), 6);
  const item = shelter!.braces.find(({ id }) => id === 'ties')!.member;
  const breaks = item.kind === 'cable' ? item.breakingLoad : Number.NaN;
  expect(tie.capacity?.value).toBeCloseTo((0.8 * breaks) / 3, 6);
  expect(tie.verdict).toBe('fails');
  const ranked = evaluation.gusts!.failures.find(({ part }) => part === 'ties');
  expect(ranked?.gust).toBeLessThan(40);
  const stock = { items: resolveItems(world, newNotes()) };
  const [fix] = fixesFor(tie, evaluation, { world, shelterName: name, stock, system: 'metric' });
  expect(fix?.utilisationAfter).toBeLessThanOrEqual(1);
});
