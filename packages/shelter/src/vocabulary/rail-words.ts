/** What can be said of posts and of everything that runs along the house. */
import type { Entry } from './entry.ts';
import {
  clipped,
  filled,
  foot,
  joint,
  ofMember,
  ofMemberOrCable,
  sacrificial,
  spaced,
  wrapped,
} from './shared.ts';
import { fact, joints, members, several } from './write.ts';

const height = fact('height', '{value: length}', 'From the ground to its top.', 'height 6 ft');

const rail: Entry = fact(
  'rail',
  '',
  'The rail along the tops of the posts, which the bows or rafters sit on.',
  'rail of lumber-2x4',
  { facts: [ofMember, joint, wrapped, sacrificial] },
);

const postFacts: readonly Entry[] = [ofMember, spaced, height, foot, joint, filled, wrapped, sacrificial];

/** Posts under a ridge: said inside the ridge. */
const ridgePosts: Entry = fact(
  'posts',
  '',
  'The posts that carry the ridge. Their height follows from the ridge.',
  'posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } }',
  { facts: postFacts },
);

export const posts: Entry = fact(
  'posts',
  '{where: word sides|grid}',
  'Rows of posts: at both sides under the eave, or a grid of several lines. The inner lines of a grid reach up under the roof and carry it by the rails along their heads; one that stands under a ridge is left to the ridge and its posts.',
  'posts sides of lumber-4x4 spaced 8 ft { height 6 ft; foot hole; rail of lumber-2x4 }',
  {
    many: true,
    facts: [
      ...postFacts.map((entry) =>
        entry === height
          ? { ...height, doc: 'From the ground to the top of the posts at the sides.' }
          : entry,
      ),
      fact(
        'lines',
        '{value: count}',
        'Number of lines of a grid, spread evenly over the width, the outer ones at the sides.',
        'lines 3',
      ),
      rail,
    ],
  },
);

export const ridge: Entry = fact(
  'ridge',
  '{form: word rail|pipe|cable}',
  'What runs along the house under the crown: a rail or pipe on posts, or a cable pulled tight between braced ends. A ridge keeps a limber arch from sinking under rain.',
  'ridge rail of gal-25 { posts of lumber-4x4 spaced 8 ft }',
  {
    facts: [
      ofMemberOrCable,
      height,
      ridgePosts,
      fact('tension', '{value: force}', 'Pull put into a cable ridge when it is set up.', 'tension 3 kN'),
      fact(
        'out',
        '{value: length}',
        'How far beyond the ends of the house the anchors of a cable ridge stand, on the ground. Further out they are lifted less, and the end posts pressed less.',
        'out 10 ft',
      ),
      fact(
        'slope',
        '{value: angle}',
        'The same by the angle at which the cable runs down to its anchors, from the level.',
        'slope 40 deg',
      ),
      fact(
        'frames',
        '{value: word tied|loose}',
        'Whether every bow or rafter is tied down to the ridge, or only rests on it (then the ridge pushes up and cannot hold down).',
        'frames tied',
      ),
      joint,
      clipped,
      { ...foot, doc: `Anchor at each end of a cable ridge. ${foot.doc}` },
      wrapped,
      sacrificial,
    ],
  },
);

export const purlins: Entry = fact(
  'purlins',
  '{count: count}',
  'Members along the house fixed to every bow or rafter: this many lines in all, spread evenly over the arc, an odd one at the crown.',
  'purlins 3 of emt-21 { joint cross-21 }',
  {
    facts: [
      ofMember,
      fact(
        'at',
        '{value: length} [up {sides: word each} side]',
        'Place of lines that are not spread evenly, as a distance along the bow or rafter from its foot: `up each side` puts one line so far up from either foot. Without it, one line, measured from the left foot.',
        'at 6 ft up each side',
        several,
      ),
      joint,
      wrapped,
      sacrificial,
    ],
  },
);

export const braces: Entry = fact(
  'braces',
  '[{plane: word along|across}]',
  'Slanting members that keep the house from racking: along the house (in its sides), or across it (in its end frames).',
  'braces along of emt-21 { at corners }',
  {
    many: true,
    facts: [
      ofMemberOrCable,
      fact(
        'at',
        '{value: word corners|ends|every-bay}',
        'Where they are: in the four corner bays, in both end frames, or in every bay of both sides, leaning one way and the other by turns.',
        'at corners',
      ),
      fact('height', '{value: length}', 'Height of the upper end over the ground.', 'height 6 ft'),
      fact(
        'tension',
        '{value: force}',
        'Pull that wires are pulled up to when they are set up.',
        'tension 400 N',
      ),
      joint,
      clipped,
      sacrificial,
    ],
  },
);

export const guys: Entry = fact(
  'guys',
  '',
  'Wires or ropes from the frame down to anchors outside the house.',
  'guys of wire-4 { at ends; out 5 ft; foot screw of screw-anchor-100 }',
  {
    many: true,
    facts: [
      ofMemberOrCable,
      fact(
        'at',
        '{value: word ends|corners|sides}',
        'Where they are: from both end frames along the house, from the four corners, or from every side post outward.',
        'at ends',
      ),
      fact('height', '{value: length}', 'Height of the upper end over the ground.', 'height 8 ft'),
      fact('out', '{value: length}', 'Distance of the anchor from the frame, on the ground.', 'out 5 ft'),
      fact('tension', '{value: force}', 'Pull put in when it is set up.', 'tension 400 N'),
      clipped,
      foot,
      sacrificial,
    ],
  },
);

export const ties: Entry = fact(
  'ties',
  '',
  'Members straight across the house that keep its two sides from spreading.',
  'ties of lumber-1x4 { height 6 ft; spaced 8 ft }',
  { many: true, facts: [ofMemberOrCable, height, spaced, joint, clipped] },
);

export const baseboards: Entry = fact(
  'baseboards',
  '',
  'Boards along the ground between the feet, which the film is fixed to or which stop the bows from sinking.',
  'baseboards of lumber-1x6',
  {
    facts: [
      ofMember,
      fact('joint', `{item: item ${joints}}`, 'What holds the board to each foot.', 'joint pipe-strap'),
    ],
  },
);

export const endFrames: Entry = fact(
  'end-frames',
  '',
  'Uprights and rails in the two ends, that doors and end film are fixed to.',
  'end-frames of lumber-2x4 { uprights 2 }',
  {
    facts: [
      ofMember,
      fact('uprights', '{value: count}', 'Uprights in each end.', 'uprights 2'),
      fact(
        'rail',
        `of {item: item ${members}} [at {height: length}]`,
        'A level rail in each end.',
        'rail of lumber-2x4 at 6 ft',
      ),
      foot,
    ],
  },
);

export const alongWords: readonly Entry[] = [
  posts,
  ridge,
  purlins,
  braces,
  guys,
  ties,
  baseboards,
  endFrames,
];
