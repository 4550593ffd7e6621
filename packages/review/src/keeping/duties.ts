/** What keeping a shelter asks for: renewals, promises and inspections, each with the day it falls due. */
import { type Evaluation, type MessagePiece, woodInGround } from '@tautline/checks';
import { laterBy, monthsLater } from '@tautline/quantity';
import { dateIn, factNode, factNodes, type Origin, type SpecNode, textIn } from '@tautline/shelter';

export interface Duty {
  readonly kind: 'renewal' | 'rot' | 'acceptance' | 'inspection' | 'season';
  /** Id of the part it is about. */
  readonly part: string;
  readonly origin: Origin;
  readonly what: string;
  readonly why: readonly MessagePiece[];
  /** ISO; absent where the spec does not say what it is counted from. */
  readonly day?: string;
  readonly state: 'overdue' | 'due' | 'later' | 'not known';
}

export interface DutyOptions {
  /** ISO day that `overdue` is judged on. */
  readonly on: string;
  /** Up to so many months ahead counts as due. */
  readonly within: number;
}

/** Months between two inspections: common practice, no source. */
const inspectEvery = 3;

/**
 * Every duty of a shelter, the earliest first, then those whose day is not known. `spec` is the shelter as
 * written (a variant laid over what it varies).
 */
export function dutiesOf(spec: SpecNode, evaluation: Evaluation, options: DutyOptions): readonly Duty[] {
  const found = [
    ...renewals(evaluation),
    ...fastenings(evaluation),
    ...rotting(spec, evaluation),
    ...promises(evaluation),
    ...inspections(spec),
    ...seasons(spec),
  ];
  const horizon = monthsLater(options.on, options.within);
  return found
    .map((duty): Duty => ({ ...duty, state: stateOf(duty.day, options.on, horizon) }))
    .sort((a, b) => (a.day ?? '9').localeCompare(b.day ?? '9'));
}

type Undated = Omit<Duty, 'state'>;

function stateOf(day: string | undefined, on: string, horizon: string): Duty['state'] {
  if (day === undefined) return 'not known';
  return day < on ? 'overdue' : day <= horizon ? 'due' : 'later';
}

function renewals({ shelter }: Evaluation): Undated[] {
  return shelter.covers.map(({ id, origin, skin, place, installed }) => ({
    kind: 'renewal',
    part: id,
    origin,
    what: `renew the ${skin.title} of the ${place}`,
    why:
      installed === undefined
        ? ['say the day it went on, as in `installed 2026-03-01`; it lasts about ', lasting(skin.life)]
        : [`on since ${installed}; it lasts about `, lasting(skin.life)],
    ...(installed === undefined ? {} : { day: laterBy(installed, skin.life) }),
  }));
}

/** Straps, ropes and plastic clips, each as old as the film it holds unless its own day is said. */
function fastenings({ shelter }: Evaluation): Undated[] {
  const { covers, roof } = shelter;
  const overRoof = roof.type === 'inflated' ? roof.straps : undefined;
  const held = covers.flatMap(({ id, origin, place, installed, fastening, fastenedSince, straps }) => [
    { id: `${id}/edge`, origin, place, item: fastening, since: fastenedSince ?? installed, word: 'fastened' },
    {
      id: `${id}/straps`,
      origin,
      place,
      item: straps?.item,
      since: straps?.since ?? installed,
      word: 'strapped',
    },
    ...(place === 'roof' && straps === undefined && overRoof !== undefined
      ? [
          {
            id: `${id}/straps`,
            origin: roof.origin,
            place,
            item: overRoof.item,
            since: overRoof.since ?? installed,
            word: 'strapped',
          },
        ]
      : []),
  ]);
  return held.flatMap(({ id, origin, place, item, since, word }): Undated[] => {
    if (item?.life === undefined) return [];
    return [
      {
        kind: 'renewal',
        part: id,
        origin,
        what: `renew the ${item.title} of the ${place}`,
        why:
          since === undefined
            ? [
                `say since when, as in \`${word} by ${item.id} since 2026-03-01\`; it lasts about `,
                lasting(item.life),
              ]
            : [`on since ${since}; it lasts about `, lasting(item.life)],
        ...(since === undefined ? {} : { day: laterBy(since, item.life) }),
      },
    ];
  });
}

/** Wood in the soil, as long as the check of rot says it lasts, from the day the frame stood. */
function rotting(spec: SpecNode, { findings, shelter }: Evaluation): Undated[] {
  const built = dateIn(factNode(spec, 'built'));
  const wood = woodInGround(shelter);
  return findings.flatMap((finding): Undated[] => {
    const life = finding.steps.at(-1);
    if (finding.id !== 'rot' || finding.verdict !== 'fails' || life?.kind !== 'time') return [];
    return [
      {
        kind: 'rot',
        part: finding.part,
        origin: finding.origin,
        what: `set new ${wood.find(({ foot }) => foot.id === finding.part)?.noun ?? 'wood'}`,
        why:
          built === undefined
            ? [
                'say the day it was built, as in `built 2026-03-15`; untreated in soil it lasts about ',
                lasting(life.value),
              ]
            : [`in the ground since ${built}; untreated it lasts about `, lasting(life.value)],
        ...(built === undefined ? {} : { day: laterBy(built, life.value) }),
      },
    ];
  });
}

function promises({ shelter }: Evaluation): Undated[] {
  return shelter.acceptances.map(({ id, origin, check, because, until }) => ({
    kind: 'acceptance',
    part: id,
    origin,
    what: `look again at ${check}`,
    why: [
      until === undefined
        ? `accepted without an end because "${because}"; say \`until\` and a date`
        : `accepted until ${until} because "${because}"`,
    ],
    ...(until === undefined ? {} : { day: until }),
  }));
}

function inspections(spec: SpecNode): Undated[] {
  const log = factNodes(spec, 'inspected').flatMap((node) => {
    const day = dateIn(node, 'on');
    return day === undefined ? [] : [{ day, told: textIn(node, 'told'), origin: node.origin }];
  });
  const last = log.sort((a, b) => a.day.localeCompare(b.day)).at(-1);
  const built = dateIn(factNode(spec, 'built'));
  const from = last?.day ?? built;
  const counted =
    last === undefined
      ? built === undefined
        ? 'no inspection is written down; say one, as in `inspected 2026-05-01 "nothing loose"`'
        : `none is written down since it was built on ${built}`
      : `last on ${last.day}${last.told === undefined ? '' : `: ${last.told}`}`;
  return [
    {
      kind: 'inspection',
      part: 'shelter',
      origin: last?.origin ?? spec.origin,
      what: 'go through the inspection list',
      why: [`${counted}; every ${inspectEvery} months (common practice, no source)`],
      ...(from === undefined ? {} : { day: monthsLater(from, inspectEvery) }),
    },
  ];
}

/** The day a shelter for part of the year is to be taken away. */
function seasons(spec: SpecNode): Undated[] {
  return factNodes(spec, 'season').flatMap((node): Undated[] => {
    const to = dateIn(node, 'to');
    if (to === undefined) return [];
    const why = [`its season is over on ${to}`];
    return [{ kind: 'season', part: 'shelter', origin: node.origin, what: 'take it away', why, day: to }];
  });
}

const lasting = (seconds: number): MessagePiece => ({ value: seconds, kind: 'time' });
