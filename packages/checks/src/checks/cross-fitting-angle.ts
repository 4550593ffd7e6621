import { type JointItem, madeFor, type Part, pointOn } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';

/** Sockets that are in line turn nothing: 180°. */
const straight = Math.PI;

interface Meeting {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly item: JointItem;
  /** Angle between the two members where they enter the fitting, rad (180° is straight through). */
  readonly angle: number;
  /** What meets it, with its verb. */
  readonly what: string;
  /** How the angle is found. */
  readonly formula: string;
}

const byTangents = 'φ = 180° - |θ(s - l) - θ(s + l)|';
const byPitch = 'from the pitch';

function meetings(input: CheckInput): Meeting[] {
  const { roof, purlins, ridge } = input.shelter;
  const list: Meeting[] = [];
  if (roof.type === 'bows') {
    const total = roof.line.at(-1)!.s;
    // The bow turns by the difference of its tangents over the length the fitting takes in.
    const turn = (at: number, item: JointItem): number => {
      const a = pointOn(roof.line, Math.max(0, at - item.insertion)).angle;
      const b = pointOn(roof.line, Math.min(total, at + item.insertion)).angle;
      return straight - Math.abs(a - b);
    };
    const fittings = [...roof.joints, ...(roof.crownFitting === undefined ? [] : [roof.crownFitting])];
    for (const joint of fittings) {
      if (joint.item.kind === 'fitting')
        list.push({
          part: joint,
          item: joint.item,
          angle: turn(joint.at, joint.item),
          what: 'the bow meets',
          formula: byTangents,
        });
    }
    for (const rail of [...purlins, ...(ridge === undefined ? [] : [ridge])]) {
      if (rail.joint?.kind !== 'fitting' || rail.joint.form !== 'cross') continue;
      for (const line of rail.lines) {
        if (line.s !== undefined)
          list.push({
            part: rail,
            item: rail.joint,
            angle: turn(line.s, rail.joint),
            what: 'the bow meets',
            formula: byTangents,
          });
      }
    }
  }
  if (roof.type === 'rafters') {
    const half = roof.form === 'gable' ? roof.span / 2 : roof.span;
    const pitch = Math.atan2(roof.rise, half);
    if (roof.peakJoint !== undefined)
      list.push({
        part: roof.peakJoint,
        item: roof.peakJoint.item,
        angle: straight - 2 * pitch,
        what: 'the pair of rafters meets',
        formula: byPitch,
      });
    if (roof.eaveJoint !== undefined)
      list.push({
        part: roof.eaveJoint,
        item: roof.eaveJoint.item,
        angle: straight / 2 + pitch,
        what: 'rafter and post meet',
        formula: byPitch,
      });
  }
  return list;
}

function run(input: CheckInput): Found[] {
  return meetings(input).map(({ part, item, angle, what, formula }) => {
    const own = item.angle ?? (item.form === 'cross' ? straight : undefined);
    if (own === undefined) return notChecked(part, `the catalogue does not give the angle of ${item.title}`);
    if (item.angleTolerance === undefined)
      return notChecked(part, `the catalogue does not say how far off its angle ${item.title} may be`);
    // What is left of an angle by rounding is no angle.
    const off = Math.abs(angle - own) < 1e-9 ? 0 : Math.abs(angle - own);
    return judge({
      part,
      utilisation: off / item.angleTolerance,
      demand: measured(off, 'angle'),
      capacity: measured(item.angleTolerance, 'angle'),
      message: [
        `${item.title} is made for `,
        measured(own, 'angle'),
        `, ${off === 0 ? 'and' : 'but'} ${what} it at `,
        measured(angle, 'angle'),
        ...(off === 0 ? ['; it takes '] : [': ', measured(off, 'angle'), ' off, where it takes ']),
        measured(item.angleTolerance, 'angle'),
        off === 0 ? ' either way.' : '.',
      ],
      source: 'practice',
      steps: [
        inWords(
          'φ',
          'angle between the members where they enter the fitting',
          formula,
          [given('l', 'length taken into the fitting', item.insertion, 'length')],
          angle,
          'angle',
          'derived',
        ),
        step(
          'Δ',
          'how far off',
          'Δ = |φ - φ_fitting|',
          [given('φ_fitting', 'angle of its sockets', own, 'angle')],
          off,
          'angle',
          'practice',
        ),
      ],
    });
  });
}

export const crossFittingAngle: Check = {
  id: 'cross-fitting-angle',
  title: 'Fitting off its angle',
  asks: 'Do the members meet each cross, corner or peak fitting at the angle it is made for?',
  matters:
    'A cross has its sockets in line and an arch is not: sprung into it, the pipe levers at the sockets until one splits.',
  formula: 'u = |φ - φ_fitting| / Δ_allowed',
  symbols: [
    {
      symbol: 'φ',
      meaning: 'angle between the members at the fitting',
      kind: 'angle',
    },
    { symbol: 'φ_fitting', meaning: 'angle of its sockets', kind: 'angle' },
    { symbol: 'Δ_allowed', meaning: 'how far off it may be', kind: 'angle' },
  ],
  sources: ['practice'],
  leavesOut: 'Play in loose sockets, heat-formed fittings.',
  mayBeAccepted: 'When the socket is slotted or heated to the angle.',
  run,
  levers: (input, finding, stock) => {
    const { roof, purlins } = input.shelter;
    if (roof.type === 'rafters') {
      const joint = [roof.peakJoint, roof.eaveJoint].find((entry) => entry?.id === finding.part);
      if (joint?.item.angle === undefined) return [];
      const pitch =
        joint === roof.peakJoint ? (straight - joint.item.angle) / 2 : joint.item.angle - straight / 2;
      return [
        {
          type: 'choice',
          options: [
            {
              title: ['Pitch the rafters at ', measured(pitch, 'angle'), ', the angle of the fittings'],
              edits: [
                {
                  type: 'set',
                  block: roof.origin,
                  word: 'pitch',
                  slots: {
                    value: {
                      type: 'quantity',
                      si: pitch,
                      kind: 'angle',
                      origin: roof.origin,
                    },
                  },
                },
              ],
            },
          ],
        },
      ];
    }
    if (roof.type !== 'bows') return [];
    const joint = [...roof.joints, roof.crownFitting].find((entry) => entry?.id === finding.part);
    const rail = purlins.find((entry) => entry.id === finding.part);
    const clamps = stock.items.filter(
      (entry) =>
        (entry.kind === 'coupler' || entry.kind === 'fitting') &&
        (entry.form === 'clamp' || entry.form === 'lashing' || entry.form === 'bolt') &&
        (entry.fits === undefined || madeFor(entry, roof.member)),
    );
    const origin = joint?.origin ?? rail?.jointOrigin;
    if (origin === undefined) return [];
    return [
      {
        type: 'choice',
        options: [
          ...clamps.map((entry) => ({
            title: [`Run the bow through unbroken and hold it with ${entry.title}`],
            edits: [
              {
                type: 'replace' as const,
                node: origin,
                slots: {
                  item: { type: 'item' as const, id: entry.id, origin },
                  ...(joint === roof.crownFitting && joint !== undefined
                    ? {
                        place: { type: 'word' as const, word: 'crown', origin },
                      }
                    : {}),
                },
              },
            ],
          })),
          {
            title: ['Leave the fitting out'],
            edits: [{ type: 'remove' as const, node: origin }],
          },
        ],
      },
    ];
  },
};
