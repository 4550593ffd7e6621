import type { Bows, Rafters, SpecEdit } from '@tautline/shelter';
import { itemValue, quantityValue, specNode } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';

/** Pieces between the ends and the joints the user said, m. */
function pieces(frame: Bows | Rafters): number[] {
  const said = frame.joints.filter((joint) => !joint.assumed).map((joint) => joint.at);
  const cuts = [0, ...said, frame.length].sort((a, b) => a - b);
  return cuts.slice(1).map((cut, index) => cut - cuts[index]!);
}

function run(input: CheckInput): Finding[] {
  const frame = input.shelter.roof;
  if (frame.type !== 'bows' && frame.type !== 'rafters') return [];
  const longest = frame.member.stockLengths.at(-1);
  if (longest === undefined) return [];
  const longestPiece = Math.max(...pieces(frame));
  const said = frame.joints.some((joint) => !joint.assumed);
  return [
    judge({
      id: stockLength.id,
      part: frame,
      utilisation: longestPiece / longest,
      demand: measured(longestPiece, 'length'),
      capacity: measured(longest, 'length'),
      message: said
        ? [
            'One piece of the bow is ',
            measured(longestPiece, 'length'),
            ` long, but ${frame.member.title} is sold in lengths of up to `,
            measured(longest, 'length'),
            '.',
          ]
        : [
            frame.type === 'bows' ? 'The bow needs ' : 'The rafter needs ',
            measured(longestPiece, 'length'),
            ` of ${frame.member.title}, more than the longest stock length of `,
            measured(longest, 'length'),
            ', and no joint was said.',
          ],
      source: 'derived',
      steps: [
        step(
          'l_piece',
          'longest piece between ends and joints',
          'l_piece = max(s_k+1 - s_k)',
          [given('l', 'length of the member', frame.length, 'length')],
          longestPiece,
          'length',
          'derived',
        ),
        step('l_stock', 'longest stock length', 'from the catalogue', [], longest, 'length', 'derived'),
      ],
      // A full stock length used whole is no near miss.
      exact: true,
    }),
  ];
}

export const stockLength: Check = {
  id: 'stock-length',
  title: 'Stock length',
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
    if (bows.type !== 'bows') return [];
    const longest = bows.member.stockLengths.at(-1);
    if (longest === undefined) return [];
    const couplers = stock.items.filter(
      (entry) => entry.kind === 'coupler' && entry.fits?.includes(bows.member.id) === true,
    );
    const clear = bows.length - longest;
    // Places that leave both pieces within stock, away from the crown and its bending first.
    const places = [clear, (clear + longest) / 2, bows.length / 3].filter(
      (at) => at > 0 && at <= longest && bows.length - at <= longest,
    );
    const unsaid = bows.joints.filter((joint) => !joint.assumed);
    const removals: SpecEdit[] = unsaid.map((joint) => ({
      type: 'remove',
      node: joint.origin,
    }));
    return [
      {
        type: 'choice',
        options: couplers.flatMap((coupler) =>
          places.map((at) => ({
            title: [`Join two lengths with ${coupler.title} at `, measured(at, 'length')],
            edits: [
              ...removals,
              {
                type: 'add' as const,
                block: bows.origin,
                node: specNode('joint', bows.origin, {
                  item: itemValue(coupler.id, bows.origin),
                  at: quantityValue(at, 'length', bows.origin),
                }),
              },
            ],
          })),
        ),
      },
    ];
  },
};
