import type { Bows, JointItem, JointUse, Rafters, Shelter } from '@tautline/shelter';
import { itemValue, lengthOf, madeFor, quantityValue, specNode } from '@tautline/shelter';
import type { Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { namedJoint } from '../joint-name.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { closer } from '../levers.ts';
import { type Limit, type Told, unknown, usesOf, worstOf } from '../limit.ts';
import { type JointLimit, jointLimits } from '../resistance.ts';

interface JointDemand {
  readonly moment: number;
  readonly pull: number;
  readonly use: number;
}

/**
 * Bending and pull at a place along the bow in one response, from either side: the wind blows from both, and the
 * model blows it from the left only, so the mirrored place counts as well.
 */
function demandIn(
  { forces }: Response,
  part: string,
  total: number,
  at: number,
  may: JointLimit,
): JointDemand | undefined {
  const own = forces.filter((force) => force.part === part);
  let worst: JointDemand | undefined;
  for (const place of [at, total - at]) {
    const nearest = Math.min(...own.map((force) => Math.abs(force.at - place)));
    for (const force of own) {
      if (Math.abs(force.at - place) > nearest + 1e-9) continue;
      const moment = Math.abs(force.moment);
      const pull = Math.max(0, force.axial);
      const use = moment / may.moment + pull / may.pull;
      if (worst === undefined || use > worst.use) worst = { moment, pull, use };
    }
  }
  return worst;
}

/** Every joint the bending of the frame has to pass through. */
export function jointsOf(shelter: Shelter, frame: Bows | Rafters): JointUse[] {
  if (frame.type === 'rafters') {
    return [...frame.joints, frame.peakJoint, frame.eaveJoint].filter((joint) => joint !== undefined);
  }
  const crosses = shelter.purlins.flatMap((purlin) => {
    const item = purlin.joint;
    // A cross made for the bow's own pipe cuts the bow in two; one for the purlin only is clamped on.
    if (item?.form !== 'cross' || !madeFor(item, frame.member)) return [];
    return purlin.lines.flatMap((line) =>
      line.s === undefined
        ? []
        : [{ id: purlin.id, origin: purlin.jointOrigin ?? purlin.origin, item, at: line.s, assumed: false }],
    );
  });
  return [...frame.joints, ...(frame.crownFitting === undefined ? [] : [frame.crownFitting]), ...crosses];
}

function limits({ shelter }: CheckInput): Limit[] {
  const { roof } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return jointsOf(shelter, roof).map((joint) => ofJoint(shelter, roof, joint));
}

function ofJoint({ site }: Shelter, roof: Bows | Rafters, joint: JointUse): Limit {
  const { title, momentCapacity, pullCapacity } = joint.item;
  if (momentCapacity <= 0)
    return unknown(joint, `${title} turns freely, and the frame is calculated as if it went through whole`);
  if (pullCapacity <= 0) return unknown(joint, `the catalogue gives ${title} no strength against a pull`);
  const total = lengthOf(roof.line);
  const limitUnder = jointLimits(site, roof.member, joint.item);
  return {
    by: 'frame',
    part: joint,
    gives: `${namedJoint(roof, joint)} gives`,
    sacrificial: roof.sacrificial === true || joint.sacrificial === true,
    onTheDay: true,
    unasked: 'the frame analysis has no forces at this joint',
    use: (response) => {
      // On the day of building the springing is new: what has not had time to creep meets the strength of that hour.
      const may = limitUnder(response.condition === 'built' ? { duration: 'gust' } : response.load);
      const demand = demandIn(response, roof.id, total, joint.at, may);
      return (
        demand && {
          utilisation: demand.use,
          loadCase: response.load.title,
          tell: () => tell(joint, demand, may, response.load.title),
        }
      );
    },
  };
}

function tell(
  { at, item: { title } }: JointUse,
  { moment, pull, use }: JointDemand,
  may: JointLimit,
  loadCase: string,
): Told {
  return {
    demand: measured(moment, 'moment'),
    capacity: measured(may.moment, 'moment'),
    message: [
      `${title} at `,
      measured(at, 'length'),
      ' along the member has to carry a bending of ',
      measured(moment, 'moment'),
      ...(pull > 1 ? [' and a pull of ', measured(pull, 'force')] : []),
      ` under ${loadCase}; it may be counted on for `,
      measured(may.moment, 'moment'),
      ...(pull > 1 ? [' or ', measured(may.pull, 'force'), ' by itself'] : []),
      '.',
    ],
    source: 'catalogue',
    steps: [
      inWords(
        'M',
        'bending at the joint, locked-in bending included',
        'from the frame analysis',
        [given('s', 'place of the joint', at, 'length')],
        moment,
        'moment',
        'frame',
      ),
      inWords(
        'N',
        'pull along the member at the joint',
        'from the frame analysis',
        [],
        pull,
        'force',
        'frame',
      ),
      ...may.steps,
      step(
        'u',
        'utilisation',
        'u = M / M_a + N / N_a',
        [given('M_a', 'bending', may.moment, 'moment'), given('N_a', 'pull', may.pull, 'force')],
        use,
        'percent',
        'catalogue',
      ),
    ],
  };
}

export const weakCoupler: Check = {
  id: 'weak-coupler',
  title: 'Weak coupler',
  asks: 'Does each coupler or fitting carry the bending and the pull at the place where it sits?',
  matters:
    'A glued socket carries less than the pipe. Where bending is largest, it is the first thing to crack or to pull apart.',
  formula: 'u = M / M_a + N / N_a, M_a = min(φ_j M_j, f_b W), N_a = φ_j N_j',
  symbols: [
    { symbol: 'M', meaning: 'bending at the joint', kind: 'moment' },
    {
      symbol: 'N',
      meaning: 'pull along the member at the joint',
      kind: 'force',
    },
    { symbol: 'M_a', meaning: 'bending the joint may be counted on for', kind: 'moment' },
    { symbol: 'N_a', meaning: 'pull it may be counted on for', kind: 'force' },
    { symbol: 'M_j', meaning: 'bending at which it gives when new and tried once', kind: 'moment' },
    { symbol: 'N_j', meaning: 'pull at which it comes apart then', kind: 'force' },
    {
      symbol: 'φ_j',
      meaning: 'the factors of what it joins: design factor, duration and heat; 1 / 1.67 for steel',
      kind: 'percent',
    },
  ],
  sources: ['catalogue', 'frame'],
  leavesOut: 'How well it was glued or screwed, fatigue in years of wind.',
  mayBeAccepted: 'When a sleeve or an inner rod was added that the catalogue does not know.',
  needs: 'frame',
  appliesTo: (shelter) => {
    const { roof } = shelter;
    return (roof.type === 'bows' || roof.type === 'rafters') && jointsOf(shelter, roof).length > 0;
  },
  limits,
  levers,
};

/** Along the bow to where it bends less, as far as stock lengths let it; then stronger joints. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { roof } = input.shelter;
  if (!input.frame.ok || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const { analysis } = input.frame;
  const joint = [...roof.joints].find((entry) => entry.id === finding.part);
  const result: Lever[] = [];
  if (joint !== undefined && !joint.assumed) {
    const longest = roof.member.stockLengths.at(-1) ?? lengthOf(roof.line);
    const others = roof.joints.filter((entry) => entry !== joint).map((entry) => entry.at);
    const cuts = [0, ...others, roof.length].sort((a, b) => a - b);
    const before = cuts.filter((cut) => cut < joint.at).at(-1) ?? 0;
    const after = cuts.find((cut) => cut > joint.at) ?? roof.length;
    const lowest = Math.max(before + 0.3, after - longest);
    const highest = Math.min(after - 0.3, before + longest);
    const places: { at: number; use: number }[] = [];
    const step = 0.0508;
    for (let at = Math.ceil(lowest / step) * step; at <= highest; at += step) {
      const limit = ofJoint(input.shelter, roof, { ...joint, at });
      const worst = limit.by === 'frame' ? worstOf(usesOf(limit, analysis)) : undefined;
      if (worst !== undefined) places.push({ at, use: worst.utilisation });
    }
    const passing = places
      .filter((place) => place.use < 0.98)
      .sort((a, b) => Math.abs(a.at - joint.at) - Math.abs(b.at - joint.at));
    const tries = [
      ...passing.slice(0, 1),
      ...passing.slice(2, 3),
      ...[...passing].sort((a, b) => a.use - b.use).slice(0, 1),
    ];
    result.push({
      type: 'choice',
      options: tries.map((place) => ({
        title: ['Move the joint to ', measured(place.at, 'length'), ' along the bow, where it bends less'],
        edits: [
          {
            type: 'replace',
            node: joint.origin,
            slots: {
              item: itemValue(joint.item.id, joint.origin),
              at: quantityValue(place.at, 'length', joint.origin),
            },
          },
        ],
      })),
    });
  }
  const use = [joint, ...(roof.type === 'rafters' ? [roof.peakJoint, roof.eaveJoint] : [])].find(
    (entry) => entry?.id === finding.part,
  );
  if (use !== undefined && !use.assumed) {
    const stronger = stock.items.filter(
      (entry): entry is JointItem =>
        (entry.kind === 'coupler' || entry.kind === 'fitting') &&
        entry.kind === use.item.kind &&
        (use.item.kind === 'coupler' || entry.form === use.item.form) &&
        entry.momentCapacity > use.item.momentCapacity &&
        madeFor(entry, roof.member),
    );
    if (roof.type === 'bows' && joint !== undefined && !joint.assumed && roof.joints.length === 1)
      result.push({
        type: 'choice',
        options: [joint.item, ...stronger].flatMap((item) => twoLowJoints(roof, joint, item)),
      });
    result.push({
      type: 'choice',
      options: stronger.map((entry) => ({
        title: [`Use ${entry.title}`],
        edits: [
          {
            type: 'replace',
            node: use.origin,
            slots: {
              item: itemValue(entry.id, use.origin),
              ...(use === joint ? { at: quantityValue(use.at, 'length', use.origin) } : {}),
            },
          },
        ],
      })),
    });
  }
  return [...result, closer(roof, roof.type)];
}

/** One whole pipe over the crown and a joint low down on either side, where the bow bends less. */
function twoLowJoints(
  bows: Bows,
  joint: JointUse,
  item: JointItem,
): Extract<Lever, { type: 'choice' }>['options'] {
  const { origin } = bows;
  const longest = bows.member.stockLengths.at(-1) ?? bows.length;
  const shortest = (bows.length - longest) / 2;
  if (shortest <= 0.3) return [];
  return [shortest, shortest * 1.2, shortest * 1.5]
    .filter((at) => at < longest && at < bows.length / 2)
    .map((at) => ({
      title: [
        `Put a whole pipe over the crown, with ${item === joint.item ? 'joints' : item.title} at `,
        measured(at, 'length'),
        ' and ',
        measured(bows.length - at, 'length'),
      ],
      edits: [
        {
          type: 'replace',
          node: joint.origin,
          slots: { item: itemValue(item.id, origin), at: quantityValue(at, 'length', origin) },
        },
        {
          type: 'add',
          block: origin,
          node: specNode('joint', origin, {
            item: itemValue(item.id, origin),
            at: quantityValue(bows.length - at, 'length', origin),
          }),
        },
      ],
    }));
}
