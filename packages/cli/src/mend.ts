/** Applies computed fixes to a text until nothing fails or nothing more is found. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { checks, type Finding, type Fix, fixesFor } from '@tautline/checks';
import {
  applySpecEdits,
  changed,
  editsByFile,
  type LoadedWorkspace,
  loadWorkspace,
} from '@tautline/language';
import type { System } from '@tautline/quantity';
import { fixContext, type Verdicts, verdictsOf } from './verdicts.ts';

export interface MendStep {
  readonly finding: Finding;
  readonly fix: Fix;
}

export interface Mended {
  readonly text: string;
  readonly steps: readonly MendStep[];
  /** Errors that no offered change makes go away. */
  readonly left: readonly Left[];
}

export interface Left {
  readonly finding: Finding;
  /** The gust the part would bear all the same, m/s, and that of the site; absent where wind is not to blame. */
  readonly bears?: { readonly gust: number; readonly site: number };
}

/** More rounds than any spec has needed; a text that still fails after them is given back as it is. */
const mostRounds = 25;

export async function mend(
  uri: string,
  text: string,
  system: System,
  on: string,
  tier: 'live' | 'full' = 'live',
): Promise<Mended> {
  const steps: MendStep[] = [];
  let now = text;
  for (let round = 0; round < mostRounds; round++) {
    const verdicts = verdictsOf(await loadText(uri, now), on, { gusts: false, tier });
    const failing = verdicts.shelters.flatMap((verdict) =>
      verdict.findings
        .filter(({ finding }) => finding.severity === 'error')
        .map(({ finding }) => ({ finding, verdict })),
    );
    const known = new Map<Finding, readonly Fix[]>();
    const fixesOf = ({ finding, verdict }: (typeof failing)[number]): readonly Fix[] => {
      const context = fixContext(verdict.loaded, system, on);
      const found =
        known.get(finding) ??
        (verdict.evaluation === undefined ? [] : fixesFor(finding, verdict.evaluation, context));
      known.set(finding, found);
      return found;
    };
    // What makes something else that fails worse is taken only where nothing else is left.
    let step: MendStep | undefined;
    for (const harmless of [true, false]) {
      for (const one of failing) {
        const fix = fixesOf(one).find((candidate) => {
          if (harmless && candidate.worse.length > 0) return false;
          const next = applied(uri, now, candidate, system);
          if (next === undefined || next === now) return false;
          now = next;
          return true;
        });
        if (fix !== undefined) {
          step = { finding: one.finding, fix };
          break;
        }
      }
      if (step !== undefined) break;
    }
    if (step === undefined)
      return {
        text: now,
        steps,
        left: failing.length === 0 ? [] : borne(verdictsOf(await loadText(uri, now), on, { tier })),
      };
    steps.push(step);
  }
  return { text: now, steps, left: [] };
}

/** The errors of these verdicts, with the gust that each part bears where it is wind that is too much for it. */
function borne({ shelters }: Verdicts): Left[] {
  return shelters.flatMap(({ evaluation, findings }) =>
    findings
      .map(({ finding }) => finding)
      .filter((finding) => finding.severity === 'error')
      .map((finding): Left => {
        const first = evaluation?.gusts?.failures.find(
          ({ check, part }) => check === finding.id && part === finding.part,
        );
        const site = evaluation?.shelter.site.gust;
        // A limit that is passed without wind, or only past the site's gust, is not the wind's doing.
        if (first === undefined || site === undefined || first.gust <= 0 || first.gust >= site)
          return { finding };
        return { finding, bears: { gust: first.gust, site } };
      }),
  );
}

/** The text with a fix written in; undefined when the fix reaches into another file or cannot be written. */
function applied(uri: string, text: string, fix: Fix, system: System): string | undefined {
  const byFile = editsByFile(fix.edits);
  const edits = byFile.get(uri);
  if (edits === undefined || byFile.size > 1) return undefined;
  const result = applySpecEdits(text, edits, system);
  return result.ok ? changed(text, result.changes) : undefined;
}

function loadText(uri: string, text: string): Promise<LoadedWorkspace> {
  return loadWorkspace(
    [{ uri, text }],
    (wanted) => readFile(fileURLToPath(wanted), 'utf8').catch(() => undefined),
    { checks: new Set(checks.map((check) => check.id)) },
  );
}
