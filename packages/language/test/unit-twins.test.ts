/** A house written in feet and pounds and its twin in metres and newtons get the same findings, whatever its kind. */
import { evaluate, type Finding } from '@tautline/checks';
import { resolveShelter } from '@tautline/shelter';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue, formatText, loadWorkspace } from '../src/index.ts';
import { framesToDraw, randomKind } from './random-spec.ts';

/** Exact by definition: foot and inch, pound, pound-force with standard gravity (NIST SP 811). */
const pound = 0.45359237;
const force = pound * 9.80665;
const twins: Readonly<Record<string, readonly [number, string]>> = {
  ft: [0.3048, 'm'],
  in: [25.4, 'mm'],
  mph: [0.44704, 'm/s'],
  lb: [pound, 'kg'],
  'lb/ft2': [pound / 0.3048 ** 2, 'kg/m2'],
  lbf: [force, 'N'],
  plf: [force / 0.3048, 'N/m'],
  psf: [force / 0.3048 ** 2, 'Pa'],
  'in/h': [25.4, 'mm/h'],
};

/** Every quantity in the other system, to fifteen figures. */
function inMetric(text: string): string {
  const number = String.raw`(?<![\w.-])(\d+(?:\.\d+)?)`;
  const inches = text.replaceAll(
    new RegExp(`${number} ft (\\d+) in(?![\\w./])`, 'g'),
    (_, feet, rest) => `${Number(feet) * 12 + Number(rest)} in`,
  );
  return inches.replaceAll(
    new RegExp(`${number} (in/h|lb/ft2|ft|in|mph|lbf|lb|plf|psf)(?![\\w./])`, 'g'),
    (whole, value, unit) => {
      const twin = twins[unit];
      return twin === undefined ? whole : `${Number((Number(value) * twin[0]).toPrecision(15))} ${twin[1]}`;
    },
  );
}

interface Judged {
  /** Ids of problems: a house that cannot be built says why. */
  readonly problems: readonly string[];
  readonly findings: readonly Finding[];
}

async function judged(texts: readonly string[]): Promise<readonly Judged[]> {
  const files = texts.map((text, n) => ({ uri: `file:///twin-${n}.shelter`, text }));
  const workspace = await loadWorkspace(files, () => undefined, { catalogue: builtInCatalogue });
  return files.map(({ uri }, n) => {
    const read = workspace.problems.filter((one) => one.uri === uri);
    expect(
      read.map(({ message }) => message),
      texts[n],
    ).toEqual([]);
    const { shelter, problems } = resolveShelter('house', workspace.worldOf(uri)!);
    const findings =
      shelter === undefined ? [] : evaluate(shelter, { on: '2027-03-01', gusts: false }).findings;
    return { problems: problems.map(({ id }) => id), findings };
  });
}

describe('random houses in two systems of units', () => {
  it('are the same house: the same findings, verdicts and utilisations; and laying out changes neither', async () => {
    const verdicts = new Set<string>();
    let built = 0;
    await fc.assert(
      fc.asyncProperty(fc.noShrink(fc.gen()), async (draw) => {
        const us = Array.from({ length: framesToDraw }, (_, kind) => randomKind(draw, kind));
        const metric = us.map(inMetric);
        const laid = us.map((text) => formatText(text));
        metric.forEach((text) => {
          expect(text).not.toMatch(/\d (ft|in|mph|lbf|lb|plf|psf)\b/);
        });
        laid.forEach((text) => {
          expect(formatText(text)).toBe(text);
        });
        const all = await judged([...us, ...metric, ...laid]);
        us.forEach((text, kind) => {
          const [one, ...others] = [0, 1, 2].map((turn) => all[kind + turn * us.length]!);
          const ids = ({ findings }: Judged): readonly string[] =>
            findings.map(({ id, part, verdict }) => `${id} ${part} ${verdict}`);
          for (const other of others) {
            expect(other.problems, text).toEqual(one!.problems);
            expect(ids(other), text).toEqual(ids(one!));
            other.findings.forEach(({ utilisation, id }, n) => {
              const was = one!.findings[n]!.utilisation;
              expect(utilisation === undefined, id).toBe(was === undefined);
              if (utilisation !== undefined && was !== undefined)
                expect(Math.abs(utilisation - was), `${id}\n${text}`).toBeLessThanOrEqual(
                  1e-5 * Math.max(1, was),
                );
            });
          }
          if (one!.findings.length > 0) built += 1;
          for (const { id, verdict } of one!.findings) verdicts.add(`${id} ${verdict}`);
        });
      }),
      { numRuns: 1 },
    );
    expect(built).toBeGreaterThan(framesToDraw - 3);
    // Houses of which nothing fails, or everything, would say little.
    expect([...verdicts].filter((one) => one.endsWith(' fails')).length).toBeGreaterThan(5);
    expect([...verdicts].filter((one) => one.endsWith(' passes')).length).toBeGreaterThan(10);
  }, 60_000);
});
