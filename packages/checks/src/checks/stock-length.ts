import type { Bows, Rafters, SpecEdit } from '@tautline/shelter';
import { itemValue, madeFor, quantityValue, specNode } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found, MessagePiece } from '../finding.ts';
import { given, inWords, judge, measured, notChecked } from '../judge.ts';

/** Pieces between the ends and joints at these places, m; driven legs belong to the outer pieces. */
export function pieces(frame: Bows | Rafters, joints: readonly number[]): number[] {
  const driven = frame.type === 'bows' ? frame.legDriven : 0;
  const cuts = [-driven, ...[...joints].sort((a, b) => a - b), frame.length + driven];
  return cuts.slice(1).map((cut, index) => cut - cuts[index]!);
}

/** Places of the joints the user said. */
function saidJoints(frame: Bows | Rafters): number[] {
  return frame.joints.filter((joint) => !joint.assumed).map((joint) => joint.at);
}

function run(input: CheckInput): Found[] {
  const frame = input.shelter.roof;
  if (frame.type !== 'bows' && frame.type !== 'rafters') return [];
  const longest = frame.member.stockLengths.at(-1);
  if (longest === undefined) return [];
  const { section } = frame.member;
  if (section.shape === 'rectangle' && (section.laminations ?? 1) > 1)
    return [notChecked(frame, 'the butts of laminated boards are staggered from layer to layer')];
  const longestPiece = Math.max(...pieces(frame, saidJoints(frame)));
  const said = saidJoints(frame).length > 0;
  return [
    judge({
      part: frame,
      utilisation: longestPiece / longest,
      demand: measured(longestPiece, 'length'),
      capacity: measured(longest, 'length'),
      message: said
        ? [
            'One piece of the bow is ',
            measured(longestPiece, 'length'),
            ` long, ${longestPiece > longest ? 'but' : 'and'} ${frame.member.title} is sold in lengths of up to `,
            measured(longest, 'length'),
            '.',
          ]
        : [
            `No joint was said: the ${frame.type === 'bows' ? 'bow' : 'rafter'} needs `,
            measured(longestPiece, 'length'),
            ` of ${frame.member.title} in one piece, and it is sold in lengths of up to `,
            measured(longest, 'length'),
            '.',
          ],
      source: 'derived',
      steps: [
        inWords(
          'l_piece',
          'longest piece between ends and joints',
          'l_piece = max(s_k+1 - s_k)',
          [given('l', 'length of the member', frame.length, 'length')],
          longestPiece,
          'length',
          'derived',
        ),
        inWords('l_stock', 'longest stock length', 'from the catalogue', [], longest, 'length', 'derived'),
      ],
      // A full stock length used whole is no near miss.
      exact: true,
    }),
  ];
}

export const stockLength: Check = {
  id: 'stock-length',
  title: 'Stock length',
  nature: 'stock',
  asks: 'Does every piece of the member come out of a length that is sold?',
  matters:
    'A bow longer than its pipe needs a joint, and a joint that was not thought of ends up where bending is largest.',
  formula: 'u = l_piece / l_stock',
  symbols: [
    {
      symbol: 'l_piece',
      meaning: 'longest piece between ends and joints',
      kind: 'length',
    },
    { symbol: 'l_stock', meaning: 'longest length sold', kind: 'length' },
  ],
  sources: ['derived'],
  leavesOut: 'Transport of long lengths.',
  mayBeAccepted: 'When a supplier has agreed to deliver longer pipe.',
  run,
  levers: (input, _finding, stock) => {
    const bows = input.shelter.roof;
    const longest = bows.type === 'bows' ? bows.member.stockLengths.at(-1) : undefined;
    if (bows.type !== 'bows' || longest === undefined) return [];
    const removals: SpecEdit[] = bows.joints
      .filter((joint) => !joint.assumed)
      .map((joint) => ({ type: 'remove', node: joint.origin }));
    const couplers = stock.items.filter((entry) => entry.kind === 'coupler' && madeFor(entry, bows.member));
    const options = couplers.flatMap((coupler) =>
      placings(bows, longest).map((places) => ({
        title: [`Join lengths with ${coupler.title} at `, ...listed(places)],
        edits: [
          ...removals,
          ...places.map(
            (at): SpecEdit => ({
              type: 'add',
              block: bows.origin,
              node: specNode('joint', bows.origin, {
                item: itemValue(coupler.id, bows.origin),
                at: quantityValue(at, 'length', bows.origin),
              }),
            }),
          ),
        ],
      })),
    );
    return [{ type: 'choice', options }];
  },
};

/** Ways to place the fewest joints, or one more, so that every piece is sold: whole lengths over the crown first. */
function placings(bows: Bows, longest: number): number[][] {
  const whole = bows.length + 2 * bows.legDriven;
  const fewest = Math.ceil(whole / longest - 1e-9);
  const ways: number[][] = [];
  for (const count of [fewest, fewest + 1]) {
    const even = whole / count;
    const outer = (whole - (count - 2) * longest) / 2;
    for (const first of [outer, even, (outer + even) / 2]) {
      if (count < 2 || first <= 0.3 || first > longest) continue;
      const inner = count > 2 ? (whole - 2 * first) / (count - 2) : 0;
      const places = Array.from({ length: count - 1 }, (_, k) => first + k * inner - bows.legDriven);
      if (places.every((at) => at > 0 && at < bows.length)) ways.push(places);
    }
  }
  // Two pieces: one as long as is sold, so that the joint comes low down on one side.
  if (fewest === 2) ways.unshift([whole - longest - bows.legDriven]);
  return ways.filter((places) => Math.max(...pieces(bows, places)) <= longest + 1e-9);
}

function listed(places: readonly number[]): MessagePiece[] {
  return places.flatMap((at, index) => [...(index === 0 ? [] : [' and ']), measured(at, 'length')]);
}
