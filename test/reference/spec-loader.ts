/** Specs written in a test, evaluated the way the command line does. */
import { type Evaluation, evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';

const site = `site test-plot {
  gust 20 m/s once per 50 yr
  exposure sheltered
  elevation 0 m
  rain 100 mm/h
  soil loam
  coldest 10 degC
  hottest 50 degC
  latitude -28 deg
  basis asce7-asd
  hazard low
}
`;

/** Evaluates the one shelter of a text; throws with the problems when it cannot be resolved. */
export async function evaluated(shelter: string, on = '2026-11-25'): Promise<Evaluation> {
  const uri = 'file:///test/spec.shelter';
  const workspace = await loadWorkspace([{ uri, text: site + shelter }]);
  const loaded = workspace.shelters[0];
  if (loaded === undefined) throw new Error(workspace.problems.map((problem) => problem.message).join('\n'));
  const { shelter: resolved, problems } = resolveShelter(loaded.name, loaded.world);
  const wrong = [...workspace.problems, ...problems].filter((problem) => problem.severity === 'error');
  if (resolved === undefined || wrong.length > 0)
    throw new Error(wrong.map((problem) => problem.message).join('\n'));
  return evaluate(resolved, { on });
}

/** Ids of the checks that fail. */
export function failing(evaluation: Evaluation): string[] {
  return evaluation.findings.filter((finding) => finding.verdict === 'fails').map((finding) => finding.id);
}
