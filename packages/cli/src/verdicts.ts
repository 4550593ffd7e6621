/** Evaluates every shelter of a loaded workspace, with places instead of origins. */
import {
  type EvaluateOptions,
  type Evaluation,
  evaluate,
  evaluateRange,
  type Finding,
  type FixContext,
  type RangeVerdict,
} from '@tautline/checks';
import {
  asSentence,
  isEcho,
  type LoadedShelter,
  type LoadedWorkspace,
  type Place,
  type Position,
} from '@tautline/language';
import {
  type Assumed,
  factNodes,
  itemIn,
  newNotes,
  type Problem,
  type Range,
  resolveItems,
  resolveRange,
  resolveShelter,
} from '@tautline/shelter';

/** Something wrong with a text or with what it says, and where. Positions from zero. */
export interface PlacedProblem {
  readonly id: string;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly uri: string;
  readonly from: Position;
  readonly to: Position;
}

export interface PlacedFinding {
  readonly finding: Finding;
  readonly place: Place | undefined;
}

export interface Verdict {
  readonly loaded: LoadedShelter;
  /** Absent when the spec could not be resolved; the problems say why. */
  readonly evaluation?: Evaluation;
  readonly findings: readonly PlacedFinding[];
  readonly assumed: readonly { readonly assumed: Assumed; readonly place: Place | undefined }[];
}

/** What is said of shelters side by side; each of them has a verdict of its own. */
export interface RangeShown {
  readonly loaded: LoadedShelter;
  readonly range: Range;
  readonly verdict: RangeVerdict;
  readonly findings: readonly PlacedFinding[];
}

export interface Verdicts {
  readonly workspace: LoadedWorkspace;
  readonly shelters: readonly Verdict[];
  readonly ranges: readonly RangeShown[];
  /** Problems of the texts and of what they say, in order of place. */
  readonly problems: readonly PlacedProblem[];
}

/** `gusts: false` leaves the first-failure gusts out where no check needs them: they take most of the time. */
export function verdictsOf(
  workspace: LoadedWorkspace,
  on: string | undefined,
  options: Pick<EvaluateOptions, 'tier' | 'gusts' | 'clock' | 'soil' | 'person'> = {},
): Verdicts {
  const problems: PlacedProblem[] = [...workspace.problems];
  const tell = (found: readonly Problem[]): void => {
    for (const { id, severity, message, origin } of found) {
      const place = workspace.placeOf(origin);
      if (place === undefined) continue;
      // What the text itself is already blamed for is not told again, as in the editor.
      const told = workspace.problems.filter(({ uri }) => uri === place.uri);
      if (isEcho(id, place, told)) continue;
      const { uri, from, to } = place;
      problems.push({ id, severity, message: asSentence(message), uri, from, to });
    }
  };
  const placed = (finding: Finding): PlacedFinding => ({ finding, place: workspace.placeOf(finding.origin) });
  const ranges = workspace.shelters.flatMap((loaded): RangeShown[] => {
    if (loaded.kind !== 'range') return [];
    const { range, problems: found } = resolveRange(loaded.name, loaded.world);
    tell(found);
    if (range === undefined) return [];
    const verdict = evaluateRange(range, on);
    return [{ loaded, range, verdict, findings: verdict.findings.map(placed) }];
  });
  const shelters = judgedIn(workspace).map((loaded) => {
    const resolved = resolveShelter(loaded.name, loaded.world);
    tell(resolved.problems);
    if (resolved.shelter === undefined) return { loaded, findings: [], assumed: [] };
    const evaluation = evaluate(resolved.shelter, { ...options, ...(on === undefined ? {} : { on }) });
    return {
      loaded,
      evaluation,
      findings: evaluation.findings.map(placed),
      assumed: evaluation.assumed.map((assumed) => ({ assumed, place: workspace.placeOf(assumed.origin) })),
    };
  });
  return { workspace, shelters, ranges, problems: once(problems) };
}

/** The shelters and variants asked for, and those that only stand in a range asked for: each once. */
function judgedIn({ shelters }: LoadedWorkspace): LoadedShelter[] {
  const judged = shelters.filter(({ kind }) => kind !== 'range');
  for (const range of shelters.filter(({ kind }) => kind === 'range')) {
    for (const stand of factNodes(range.world.definitions.get(range.name), 'stand')) {
      const name = itemIn(stand, 'shelter');
      const definition = name === undefined ? undefined : range.world.definitions.get(name);
      if (definition === undefined || judged.some(({ origin }) => origin === definition.origin)) continue;
      const [title = ''] = definition.doc.split('\n');
      judged.push({ ...range, kind: 'shelter', name: definition.name, title, origin: definition.origin });
    }
  }
  return judged;
}

/** What a search for fixes needs to know of a shelter. */
export function fixContext(
  loaded: LoadedShelter,
  system: 'metric' | 'us',
  on: string | undefined,
): FixContext {
  return {
    world: loaded.world,
    shelterName: loaded.name,
    stock: { items: resolveItems(loaded.world, newNotes()) },
    system,
    ...(on === undefined ? {} : { on }),
  };
}

/** The same problem of a shared file, or one that both reader and resolver found, is told once. */
function once(problems: readonly PlacedProblem[]): PlacedProblem[] {
  const seen = new Set<string>();
  return problems.filter((problem) => {
    const key = `${problem.uri}:${problem.from.line}:${problem.from.character}:${problem.id}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
