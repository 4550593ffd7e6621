/** What can be said of the frames that span the house: bows, rafters, a rigid cap, an inflated roof. */
import type { Entry } from './entry.ts';
import { filled, foot, joint, ofMember, sacrificial, screwed, spaced, wrapped } from './shared.ts';
import { fact, members, needed } from './write.ts';

const span = fact(
  'span',
  '{value: length}',
  'Distance between the feet, across the house. Left out, it is the width of the footprint.',
  'span 13 ft 6 in',
);

export const bows: Entry = fact(
  'bows',
  '',
  'A row of equal arches across the house, one at each end and one every spacing. They stand on their own feet, or on the rails of side posts when there are any. Give the rise or the length; the other follows.',
  'bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft 6 in; foot stub of rebar-12 }',
  {
    facts: [
      ofMember,
      { ...spaced, required: true },
      fact(
        'shape',
        '{value: word elastic|arc|cold-bent|laminated|pointed}',
        'elastic: a straight pipe or stick sprung into its arch. cold-bent: bent on a bender to arcs and straight legs. arc: made to a part of a circle. laminated: thin boards bent and fixed together. pointed: two arcs that meet at a ridge.',
        'shape elastic',
      ),
      span,
      fact(
        'rise',
        '{value: length}',
        'Height of the crown over the springing (the top of the foot or of the side rail).',
        'rise 7 ft 6 in',
      ),
      fact(
        'length',
        '{value: length}',
        'Length of the whole bow along the curve, without what goes into the ground.',
        'length 20 ft',
      ),
      fact(
        'leg',
        '{value: length}',
        'Straight upright leg at each side below the bent part of a cold-bent bow, above the ground.',
        'leg 4 ft',
      ),
      fact(
        'laminations',
        '{value: count}',
        'Number of thin boards in a laminated bow, through its depth.',
        'laminations 4',
      ),
      fact(
        'glued',
        'with {item: item supply of glue}',
        'The glue between the boards of a laminated bow.',
        'glued with glue-5kg',
      ),
      { ...screwed, doc: 'The screws that hold the boards of a laminated bow together.' },
      joint,
      foot,
      filled,
      wrapped,
      sacrificial,
    ],
  },
);

export const rafters: Entry = fact(
  'rafters',
  '',
  'A row of equal straight (or slightly cambered) rafters, pair by pair over a gable or one by one over a single slope.',
  'rafters spaced 4 ft of lumber-2x4 { shape gable; pitch 25 deg; camber 2 in }',
  {
    facts: [
      ofMember,
      { ...spaced, required: true },
      fact(
        'shape',
        '{value: word gable|single-slope}',
        'gable: two slopes that meet at a ridge. single-slope: one slope, the left side low.',
        'shape gable',
        { also: ['form'] },
      ),
      span,
      fact(
        'pitch',
        '{value: angle}',
        'Slope of the rafter, from the level. Give the pitch or the rise.',
        'pitch 25 deg',
      ),
      fact(
        'rise',
        '{value: length}',
        'Height of the ridge (or of the high side) over the eave.',
        'rise 3 ft 3 in',
      ),
      fact(
        'camber',
        '{value: length}',
        'How far the middle of the rafter stands above the straight line between its ends. A little keeps film tight and lets water run off.',
        'camber 2 in',
      ),
      fact('overhang', '{value: length}', 'Length of rafter beyond the eave rail.', 'overhang 1 ft'),
      joint,
      fact(
        'tie',
        `of {item: item ${members}} [at {place: word eave}] [at {height: length}]`,
        'Tie between the two rafters of a pair: at the eave, or as a collar at a height over it.',
        'tie of lumber-1x4 at eave',
      ),
      wrapped,
      sacrificial,
    ],
  },
);

export const cap: Entry = fact(
  'cap',
  '',
  'A closed, rigid clear cap or dome that needs no bows, set over seedlings and used again.',
  'cap of clear-sheet-1 spaced 1.2 m { rise 400 mm }',
  {
    facts: [
      fact('of', '{item: item sheet|film}', 'What the cap is made of.', 'of clear-sheet-1', needed),
      { ...spaced, required: true, doc: 'Length of one cap along the bed.' },
      fact('rise', '{value: length}', 'Height of the crown over the rim.', 'rise 400 mm', needed),
      span,
      foot,
    ],
  },
);

export const inflated: Entry = fact(
  'inflated',
  '',
  'A roof of two films blown apart by a fan, their edges held on a post-and-rail frame, with straps over them to limit the bulge.',
  'inflated { pressure 60 Pa; rise 2 ft; strapped by strap-25 every 4 ft }',
  {
    facts: [
      fact('pressure', '{value: pressure}', 'Air pressure between the two films.', 'pressure 60 Pa', needed),
      fact('rise', '{value: length}', 'Height of the bulge over the rails.', 'rise 2 ft', needed),
      fact(
        'hang',
        '{value: length}',
        'How far the inner film hangs below the rails; as far as the outer one rises when left out, which is so when both are cut to one width.',
        'hang 1 ft',
      ),
      span,
      fact(
        'strapped',
        'by {item: item fastening} every {value: length} [since {since: date}]',
        'Straps over the film that limit its bulge, and since when, where they are not as old as the film.',
        'strapped by strap-25 every 4 ft',
      ),
      fact(
        'fan',
        '{value: text}',
        'The fan that holds it up, in words.',
        'fan "small blower on the yard battery"',
      ),
      fact(
        'answered',
        'within {value: time}',
        'How long it takes until somebody is there when the fan stops: to lift the films off the water or let it out.',
        'answered within 10 min',
      ),
    ],
  },
);

export const frames: readonly Entry[] = [bows, rafters, cap, inflated];
