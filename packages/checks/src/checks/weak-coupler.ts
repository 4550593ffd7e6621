import type { Bows, JointUse, Rafters, Shelter } from '@tautline/shelter';
import { itemValue, madeFor, quantityValue, specNode } from '@tautline/shelter';
import type { FrameAnalysis, Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';

interface JointDemand {
  readonly moment: number;
  readonly pull: number;
  readonly response: Response;
}

/**
 * Worst bending and pull at a place along the bow, from either side: the wind blows from both, and the
 * model blows it from the left only, so the mirrored place counts as well.
 */
export function demandAt(
  analysis: Pick<FrameAnalysis, 'responses'>,
  part: string,
  total: number,
  at: number,
  joint: { momentCapacity: number; pullCapacity: number },
): JointDemand | undefined {
  let worst: JointDemand | undefined;
  let most = -1;
  for (const response of analysis.responses) {
    if (response.load.use === 'service' || response.status !== 'holds') continue;
    for (const place of [at, total - at]) {
      const near = response.forces.filter((force) => force.part === part);
      const force = near.reduce(
        (best, candidate) => (Math.abs(candidate.at - place) < Math.abs(best.at - place) ? candidate : best),
        near[0]!,
      );
      const moment = Math.abs(force.moment);
      const pull = Math.max(0, force.axial);
      const use = moment / joint.momentCapacity + pull / joint.pullCapacity;
      if (use > most) {
        most = use;
        worst = { moment, pull, response };
      }
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

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const joints = jointsOf(input.shelter, roof);
  if (joints.length === 0) return [];
  if (!input.frame.ok) return [notChecked(roof, input.frame.reason)];
  const { analysis } = input.frame;
  const total = roof.line.at(-1)!.s;
  return joints.map((joint) => {
    if (joint.item.momentCapacity === 0)
      return notChecked(
        joint,
        `${joint.item.title} turns freely, and the frame is calculated as if it went through whole`,
      );
    const demand = demandAt(analysis, roof.id, total, joint.at, joint.item);
    if (demand === undefined) return notChecked(joint, 'the frame gives way before the joint can be judged');
    const use = demand.moment / joint.item.momentCapacity + demand.pull / joint.item.pullCapacity;
    return judge({
      part: joint,
      utilisation: use,
      demand: measured(demand.moment, 'moment'),
      capacity: measured(joint.item.momentCapacity, 'moment'),
      loadCase: demand.response.load.title,
      message: [
        `${joint.item.title} at `,
        measured(joint.at, 'length'),
        ' along the member has to carry a bending of ',
        measured(demand.moment, 'moment'),
        ...(demand.pull > 1 ? [' and a pull of ', measured(demand.pull, 'force')] : []),
        '; it takes ',
        measured(joint.item.momentCapacity, 'moment'),
        ...(demand.pull > 1 ? [' or ', measured(joint.item.pullCapacity, 'force'), ' by itself'] : []),
        '.',
      ],
      source: 'catalogue',
      steps: [
        step(
          'M',
          'bending at the joint, locked-in bending included',
          'from the frame analysis',
          [given('s', 'place of the joint', joint.at, 'length')],
          demand.moment,
          'moment',
          'frame',
        ),
        step(
          'N',
          'pull along the member at the joint',
          'from the frame analysis',
          [],
          demand.pull,
          'force',
          'frame',
        ),
        step(
          'u',
          'utilisation',
          'u = M / M_j + N / N_j',
          [
            given('M_j', 'bending the joint carries', joint.item.momentCapacity, 'moment'),
            given('N_j', 'pull the joint carries', joint.item.pullCapacity, 'force'),
          ],
          use,
          'percent',
          'catalogue',
        ),
      ],
    });
  });
}

export const weakCoupler: Check = {
  id: 'weak-coupler',
  title: 'Weak coupler',
  asks: 'Does each coupler or fitting carry the bending and the pull at the place where it sits?',
  matters:
    'A glued socket carries less than the pipe. Where bending is largest, it is the first thing to crack or to pull apart.',
  formula: 'u = M / M_j + N / N_j',
  symbols: [
    { symbol: 'M', meaning: 'bending at the joint', kind: 'moment' },
    {
      symbol: 'N',
      meaning: 'pull along the member at the joint',
      kind: 'force',
    },
    { symbol: 'M_j, N_j', meaning: 'what the joint carries', kind: 'moment' },
  ],
  sources: ['catalogue', 'frame'],
  leavesOut: 'How well it was glued or screwed, fatigue in years of wind.',
  mayBeAccepted: 'When a sleeve or an inner rod was added that the catalogue does not know.',
  run,
  levers,
};

/** Along the bow to where it bends less, as far as stock lengths let it; then stronger joints. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { roof } = input.shelter;
  if (!input.frame.ok || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const { analysis } = input.frame;
  const joint = [...roof.joints].find((entry) => entry.id === finding.part);
  const result: Lever[] = [];
  const total = roof.line.at(-1)!.s;
  if (joint !== undefined && !joint.assumed) {
    const longest = roof.member.stockLengths.at(-1) ?? total;
    const others = roof.joints.filter((entry) => entry !== joint).map((entry) => entry.at);
    const cuts = [0, ...others, roof.length].sort((a, b) => a - b);
    const before = cuts.filter((cut) => cut < joint.at).at(-1) ?? 0;
    const after = cuts.find((cut) => cut > joint.at) ?? roof.length;
    const lowest = Math.max(before + 0.3, after - longest);
    const highest = Math.min(after - 0.3, before + longest);
    const places: { at: number; use: number }[] = [];
    const step = 0.0508;
    for (let at = Math.ceil(lowest / step) * step; at <= highest; at += step) {
      const demand = demandAt(analysis, roof.id, total, at, joint.item);
      if (demand !== undefined)
        places.push({
          at,
          use: demand.moment / joint.item.momentCapacity + demand.pull / joint.item.pullCapacity,
        });
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
  if (roof.type === 'bows' && joint !== undefined && !joint.assumed && roof.joints.length === 1) {
    result.push({ type: 'choice', options: twoLowJoints(roof, joint) });
  }
  const use = [joint, ...(roof.type === 'rafters' ? [roof.peakJoint, roof.eaveJoint] : [])].find(
    (entry) => entry?.id === finding.part,
  );
  if (use !== undefined && !use.assumed) {
    const stronger = stock.items.filter(
      (entry) =>
        (entry.kind === 'coupler' || entry.kind === 'fitting') &&
        entry.kind === use.item.kind &&
        (use.item.kind === 'coupler' || entry.form === use.item.form) &&
        entry.momentCapacity > use.item.momentCapacity &&
        madeFor(entry, roof.member),
    );
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
  return result;
}

/** One whole pipe over the crown and a joint low down on either side, where the bow bends less. */
function twoLowJoints(bows: Bows, joint: JointUse): Extract<Lever, { type: 'choice' }>['options'] {
  const { origin } = bows;
  const longest = bows.member.stockLengths.at(-1) ?? bows.length;
  const shortest = (bows.length - longest) / 2;
  if (shortest <= 0.3) return [];
  return [shortest, shortest * 1.2, shortest * 1.5]
    .filter((at) => at < longest && at < bows.length / 2)
    .map((at) => ({
      title: [
        'Put a whole pipe over the crown, with joints at ',
        measured(at, 'length'),
        ' and ',
        measured(bows.length - at, 'length'),
      ],
      edits: [
        {
          type: 'replace',
          node: joint.origin,
          slots: { item: itemValue(joint.item.id, origin), at: quantityValue(at, 'length', origin) },
        },
        {
          type: 'add',
          block: origin,
          node: specNode('joint', origin, {
            item: itemValue(joint.item.id, origin),
            at: quantityValue(bows.length - at, 'length', origin),
          }),
        },
      ],
    }));
}
