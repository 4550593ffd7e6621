import { personLoad } from '@tautline/loads';
import type { Assumed, Shelter } from '@tautline/shelter';
import {
  analyseFrame,
  analyseHouse,
  Cancelled,
  type FrameAnalysis,
  type HouseAnalysis,
  type KnownFrames,
  type StageClock,
  type Stages,
  type StageTime,
  stagesBy,
} from '@tautline/structure';
import { withAcceptances } from './acceptance.ts';
import { agesUnknown } from './ageing.ts';
import type { CheckInput } from './check.ts';
import type { Finding } from './finding.ts';
import { gustOrder } from './gust.ts';
import type { GustOrder } from './gust-order.ts';
import { checks, gustChecks, wholeHouseChecks } from './registry.ts';
import { materialsNotCovered } from './resistance.ts';
import { applies, runCheck } from './run-check.ts';

export interface EvaluateOptions {
  /** Day ages are counted to, ISO. */
  readonly on?: string;
  /** Asked between stages; when true `Cancelled` is thrown. */
  readonly cancelled?: () => boolean;
  /** Also looks at somebody working on the frame or leaning on it; as the spec says where left out. */
  readonly person?: boolean;
  /** Feet in the ground give as the soil does; as the site says where left out. */
  readonly soil?: boolean;
  /**
   * False leaves the gusts out where no check needs them; 'later' leaves them out with what is found by them, and
   * `awaits` says what that is. They are worked out unless said otherwise.
   */
  readonly gusts?: boolean | 'later';
  /** 'full' also works out the whole house in space, which takes seconds; the typical frame alone unless said. */
  readonly tier?: 'live' | 'full';
  /** False leaves out of the full tier how many times its load the house would stand: for trying changes out. */
  readonly beyond?: boolean;
  /** Told the share of the full tier that is done, 0 to 1, and what comes next. */
  readonly progress?: (share: number, next: string) => void;
  /** Times the stages, and ends those that take too long; nothing is timed without a clock. */
  readonly clock?: StageClock;
  /** Finds what was worked out before (`knownFrames`): the same verdict, sooner. */
  readonly known?: KnownFrames | undefined;
}

/** What is not covered, and why. */
export interface Uncovered {
  /** Check id, or 'model' and 'loads' for what lies outside every check. */
  readonly id: string;
  readonly reason: string;
}

/** The whole verdict on one shelter. Plain data. */
export interface Evaluation {
  readonly shelter: Shelter;
  /** Failures, near misses and stale acceptances first; then what passes. */
  readonly findings: readonly Finding[];
  readonly assumed: readonly Assumed[];
  readonly notChecked: readonly Uncovered[];
  readonly analysis?: FrameAnalysis;
  /** In which order parts give way as the gust rises, and when to have the film off. */
  readonly gusts?: GustOrder;
  /** Ids of checks whose findings are still to come, because they need the gusts. */
  readonly awaits?: readonly string[];
  /** The whole house in space, where the full tier was asked for and had an answer. */
  readonly house?: HouseAnalysis;
  /** What each stage took, where a clock was handed in. */
  readonly stages?: readonly StageTime[];
}

/** Not covered by frames in their plane. */
function besideTheFrame(
  { opening, endFrames }: Shelter,
  endsUnseen: string | undefined,
): readonly Uncovered[] {
  const told = [
    `how bracing, purlins and film help the frames: one frame is looked at by itself, and only ${inSpace}`,
    ...(endFrames === undefined
      ? []
      : [`uprights and rails in the ends, and the feet of the uprights: only ${inSpace}`]),
    ...(endsUnseen === undefined ? [] : [endsUnseen]),
    // The push itself goes into the bracing along the house, which `racking` judges.
    ...(opening.ends === 'clad'
      ? [
          `wind on an end wall pushes the end frame along the house, about half of it through the frame and half straight into the ground: what that does to the frame, and to the purlins beside it, cannot be seen in the plane of one frame; only ${inSpace}`,
        ]
      : []),
  ];
  return told.map((reason) => ({ id: 'model', reason }));
}

const inSpace = 'the whole house in space (the full analysis) tells';

/** Outside every check. */
function outside({ covers, doors = [] }: Shelter): readonly Uncovered[] {
  const sheets = covers.some(({ place, skin }) => place !== 'roof' && skin.kind === 'sheet');
  const bare = [...(sheets ? ['sheets of the sides and ends'] : []), ...(doors.length > 0 ? ['doors'] : [])];
  return [
    { id: 'loads', reason: 'hail, and things blown against the house, are not in the load cases' },
    ...(bare.length === 0
      ? []
      : [
          {
            id: 'model',
            reason: `${bare.join(' and ')} are checked neither themselves nor for their fastenings`,
          },
        ]),
  ];
}

/** That nobody climbs is what was taken; how much somebody would add is told by what the frame carries by itself. */
function noPerson({ site, climbed }: Shelter, frame: CheckInput['frame']): Uncovered {
  const own = frame.ok ? weightOf(frame.analysis) : 0;
  const { onRoof } = personLoad(site.basis);
  const times = onRoof / own;
  const hint =
    own <= 0
      ? ''
      : times >= 1.5
        ? `; one person weighs ${Math.round(times)} times as much as one frame with its cover`
        : `; one person weighs ${Math.round(100 * times)} % of one frame with its cover`;
  const why =
    climbed === false ? 'the spec keeps people off it' : 'say `people climb` where somebody climbs or leans';
  return { id: 'loads', reason: `a person on or against the frame is not in the load cases: ${why}${hint}` };
}

/** Weight of one frame with what lies on it, N. */
function weightOf({ cases, states }: FrameAnalysis): number {
  const { elements } = states.built.system;
  const dead = cases.find(({ nature }) => nature === 'dead');
  return -(dead?.lines ?? []).reduce(
    (sum, { element, wy }) => sum + wy * (elements[element]?.length ?? 0),
    0,
  );
}

const firmFeet: Uncovered = {
  id: 'model',
  reason: 'feet stand firm in the model: say `ground giving` of the site to let them give as the soil does',
};

/** Resolved shelter in, verdict out: the one function behind editor, command line, book and review. */
export function evaluate(shelter: Shelter, options: EvaluateOptions = {}): Evaluation {
  const stages = stagesBy(options.clock, options.cancelled);
  // What the spec says of its people and its ground; the options are for trying the other.
  const person = options.person ?? shelter.climbed === true;
  const soil = options.soil ?? shelter.site.givingGround === true;
  const { analyse = analyseFrame, solve } = options.known ?? {};
  const frame = analyse(shelter, {
    stages,
    solve,
    person,
    soil,
  });
  const later = options.gusts === 'later';
  const wanted =
    !later &&
    (options.gusts !== false ||
      checks.some((check) => check.needs === 'gusts' && applies(check, { shelter })));
  const house = options.tier === 'full' ? wholeHouse(shelter, { ...options, soil }, stages) : undefined;
  // A cap is ranked by balance alone.
  const rankable = frame.ok || shelter.roof.type === 'cap';
  const { on } = options;
  const ranked =
    rankable && wanted
      ? stages.run('gusts', (cancelled) =>
          gustOrder(shelter, frame.ok ? frame.analysis : undefined, {
            cancelled,
            solve,
            ...(on === undefined ? {} : { on }),
            ...(house === undefined ? {} : { house }),
          }),
        )
      : undefined;
  const gusts = ranked?.ok === true ? ranked.value : undefined;
  const input: CheckInput = {
    shelter,
    frame,
    ...(house === undefined ? {} : { house }),
    ...(gusts === undefined ? {} : { gusts }),
    ...(ranked?.ok === false ? { noGusts: ranked.reason } : {}),
    ...(options.on === undefined ? {} : { on: options.on }),
  };
  const all = checks.flatMap((check) => runCheck(check, input));
  const byGust = later && rankable ? all.filter(({ id }) => gustChecks.has(id)) : [];
  const awaits = [...new Set(byGust.map(({ id }) => id))];
  const findings = all.filter((finding) => !byGust.includes(finding));
  const traced = frame.ok ? withEndZones(findings, frame.analysis) : findings;
  const unasked = (check: string): boolean =>
    awaits.includes(check) || (options.tier !== 'full' && wholeHouseChecks.has(check));
  const judged = withAcceptances(shelter, traced, options.on, unasked);
  const order = { error: 0, warning: 1, information: 2 } as const;
  return {
    shelter,
    findings: [...judged.filter((finding) => finding.verdict !== 'not checked')].sort(
      (a, b) => order[a.severity] - order[b.severity],
    ),
    assumed: shelter.assumed,
    notChecked: [
      ...judged
        .filter((finding) => finding.verdict === 'not checked')
        .map((finding) => ({ id: finding.id, reason: finding.reason ?? '' })),
      ...(frame.ok ? frame.analysis.notCovered.map((reason) => ({ id: 'loads', reason })) : []),
      ...shelter.unmodelled.map((entry) => ({
        id: 'model',
        reason: `${entry.what} is in the spec but not in the model`,
      })),
      ...(ranked?.ok === false ? [{ id: 'gusts', reason: ranked.reason }] : []),
      ...[...materialsNotCovered(shelter), ...agesUnknown(shelter, options.on)].map((reason) => ({
        id: 'materials',
        reason,
      })),
      ...(person ? [] : [noPerson(shelter, frame)]),
      ...(soil ? [] : [firmFeet]),
      ...(house?.ok === true
        ? [...house.house.notCovered, ...house.house.notes].map((reason) => ({ id: 'whole-house', reason }))
        : besideTheFrame(shelter, frame.ok ? frame.analysis.endsUnseen : undefined)),
      ...outside(shelter),
    ],
    ...(frame.ok ? { analysis: frame.analysis } : {}),
    ...(gusts === undefined ? {} : { gusts }),
    ...(awaits.length === 0 ? {} : { awaits }),
    ...(house?.ok === true ? { house: house.house } : {}),
    ...(options.clock === undefined ? {} : { stages: stages.times }),
  };
}

/** Puts before the steps of a finding that a frame near an end governs how the wind of the end zone was found. */
function withEndZones(findings: readonly Finding[], { responses }: FrameAnalysis): readonly Finding[] {
  const zones = new Map(
    responses.flatMap(({ load }) => (load.steps === undefined ? [] : [[load.title, load.steps] as const])),
  );
  if (zones.size === 0) return findings;
  return findings.map((finding) => {
    const zone = finding.loadCase === undefined ? undefined : zones.get(finding.loadCase);
    return zone === undefined ? finding : { ...finding, steps: [...zone, ...finding.steps] };
  });
}

/** The full tier; stopping it throws as stopping the live tier does. */
function wholeHouse(shelter: Shelter, options: EvaluateOptions, stages: Stages): CheckInput['house'] {
  const { progress, beyond = true, soil = false } = options;
  const answer = stages.run('whole-house', (cancelled) => {
    const found = analyseHouse(shelter, {
      cancelled,
      soil,
      beyond,
      ...(progress === undefined ? {} : { progress }),
    });
    if (!found.ok && cancelled()) throw new Cancelled();
    return found;
  });
  if (options.cancelled?.() === true) throw new Cancelled();
  return answer.ok ? answer.value : answer;
}
