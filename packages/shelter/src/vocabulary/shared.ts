/** Facts that mean the same in every block they may stand in. */
import type { Entry } from './entry.ts';
import { anchorLike, fact, joints, members, needed, several } from './write.ts';

export const ofMember: Entry = fact(
  'of',
  `{item: item ${members}}`,
  'The stock item it is made of.',
  'of pvc40-25',
  needed,
);

export const ofMemberOrCable: Entry = fact(
  'of',
  `{item: item ${members}|cable}`,
  'The stock item it is made of.',
  'of emt-21',
  needed,
);

export const spaced: Entry = fact(
  'spaced',
  '{value: length}',
  'Distance from one to the next along the house, centre to centre. The last bay is made shorter when the length does not divide evenly.',
  'spaced 4 ft',
);

export const joint: Entry = fact(
  'joint',
  `{item: item ${joints}} [with {cord: item supply of cord}] [at {place: word crown|peak|eave|top}] [at {at: length} [up {sides: word each} side]]`,
  'A fitting that joins it to its own next length (give the distance along the member from the left foot, or `up each side` for one from either foot) or to what it meets (at crown, peak, eave or top). What is tied may say the cord: `joint lashing with sisal-6mm`. Without any joint, the program puts joints where stock lengths end and says so.',
  'joint socket-25 at 10 ft',
  several,
);

export const sacrificial: Entry = fact(
  'sacrificial',
  '',
  'Meant to give way first in a storm, so that the rest stands and only this has to be rebuilt.',
  'sacrificial',
);

export const wrapped: Entry = fact(
  'wrapped',
  '[with {item: item supply of wrapping}] [with {value: text}]',
  'Wrapped where film touches it, so that bark, rough wood or hot metal does not cut the film: with something of the catalogue, which is counted and priced, or with something of your own in words.',
  'wrapped with old-film-100mm',
);

const mix: Entry = fact(
  'mix',
  '{item: item supply of concrete}',
  'The concrete it is set in.',
  'mix concrete-25kg',
);

export const clipped: Entry = fact(
  'clipped',
  'with {item: item supply of wire-clip}',
  'The clips that hold its loops where it is wire or rope.',
  'clipped with clip-5mm',
);

export const screwed: Entry = fact(
  'screwed',
  'with {item: item supply of screw}',
  'The screws that hold it.',
  'screwed with screw-5x50',
);

export const filled: Entry = fact(
  'filled',
  'with {with: word concrete|rebar|timber} [up to {upTo: length}]',
  'The hollow lower part is filled and reinforced, up to this height over the ground (the whole part when no height is said).',
  'filled with concrete up to 6 ft',
  {
    facts: [fact('of', `{item: item ${members}}`, 'The bar or stick put inside.', 'of rebar-12'), mix],
  },
);

export const foot: Entry = fact(
  'foot',
  '{kind: word stub|driven|hole|concrete|deadman|screw|ballast|bearing|poked}',
  'How it meets the ground: slid over a driven stub, driven itself, set in an earth hole, in concrete, on a buried deadman, tied to a screw anchor, weighed down by ballast, standing on a pad (bearing), or poked into soft soil.',
  'foot stub of rebar-12 { length 4 ft; deep 2 ft; lean 85 deg }',
  {
    facts: [
      fact('of', `{item: item ${anchorLike}}`, 'The stub, stake or anchor.', 'of rebar-12'),
      fact('length', '{value: length}', 'Whole length of the stub or stake.', 'length 4 ft'),
      fact(
        'deep',
        '{value: length}',
        'Depth in the ground, of what is driven or poked in and of a hole that is dug.',
        'deep 2 ft',
        {
          also: ['driven'],
        },
      ),
      fact('across', '{value: length}', 'Diameter of the hole, footing or plate.', 'across 10 in'),
      mix,
      fact('weighs', '{value: mass}', 'Mass of each ballast, deadman or concrete foot.', 'weighs 60 kg'),
      fact(
        'lean',
        '{value: angle}',
        'Lean of the stub from the level: 90 deg is upright; less leans outward at its foot, so that a sprung bow meets it straight.',
        'lean 85 deg',
      ),
      fact(
        'held',
        '{value: word clamped|pinned}',
        'Whether the foot keeps the member from turning (a long close-fitting stub does, a loose socket does not).',
        'held clamped',
      ),
      sacrificial,
    ],
  },
);
