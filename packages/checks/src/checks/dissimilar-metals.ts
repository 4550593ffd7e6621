import { type MaterialFamily, type MemberItem, type Part, railsUnder, type Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { railNoun } from '../rails.ts';
import { remark } from '../remark.ts';

interface Piece {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly member: MemberItem;
  readonly noun: string;
}

function pieces(shelter: Shelter): Piece[] {
  const { roof, sidePosts, eaveRail, purlins } = shelter;
  return [
    ...(roof.type === 'bows' || roof.type === 'rafters'
      ? [{ part: roof, member: roof.member, noun: roof.type }]
      : []),
    ...(sidePosts === undefined ? [] : [{ part: sidePosts, member: sidePosts.member, noun: 'side posts' }]),
    ...[eaveRail, ...railsUnder(shelter), ...purlins].flatMap((rail) =>
      rail === undefined || rail.member.kind === 'cable'
        ? []
        : [{ part: rail, member: rail.member, noun: railNoun(rail) }],
    ),
  ];
}

const has = (pair: readonly [Piece, Piece], family: MaterialFamily): boolean =>
  pair.some((piece) => piece.member.material.family === family);

/** Why two pieces should not touch in the wet, if they should not. Common practice, no source. */
function quarrel(pair: readonly [Piece, Piece]): string | undefined {
  const treated = pair.some((piece) => piece.member.material.treated === true);
  if (has(pair, 'aluminium') && has(pair, 'steel'))
    return 'aluminium wastes away where it touches steel in the wet';
  if (has(pair, 'aluminium') && treated) return 'the copper salts of treated wood eat aluminium';
  return undefined;
}

function run(input: CheckInput): Found[] {
  const list = pieces(input.shelter);
  const metals = list.filter((piece) => ['steel', 'aluminium'].includes(piece.member.material.family));
  if (metals.length === 0) return [];
  // Everything along the house is fixed to the frames and posts, so these are the pairs that touch.
  const [frame, ...others] = list;
  const findings = (frame === undefined ? [] : others).flatMap((other) => {
    const why = quarrel([frame as Piece, other]);
    return why === undefined
      ? []
      : [
          remark(
            other.part,
            'fails',
            [
              `The ${other.noun} of ${other.member.title} touch ${(frame as Piece).noun} of ${(frame as Piece).member.title}: ${why}. Keep them apart with a plastic strip or paint.`,
            ],
            'practice',
          ),
        ];
  });
  return findings;
}

export const dissimilarMetals: Check = {
  id: 'dissimilar-metals',
  title: 'Metals that do not agree',
  nature: 'keeping',
  asks: 'Do aluminium and steel, or aluminium and treated wood, touch where rain and sweat get to them?',
  matters: 'The weaker metal goes first, hidden under the clamp that holds the house together.',
  formula: 'aluminium on steel, or on wood treated with copper',
  symbols: [],
  sources: ['practice'],
  leavesOut:
    'Fittings, screws and clamps, whose metal the catalogue does not give; paint and plastic between.',
  mayBeAccepted: 'Where the two are kept apart by tape, paint or a plastic sleeve.',
  run,
};
