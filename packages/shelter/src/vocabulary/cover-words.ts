/** What can be said of coverings, of what grows under them, and of the house around them. */
import type { Entry } from './entry.ts';
import { sacrificial, screwed } from './shared.ts';
import { fact, members, needed, skins } from './write.ts';

export const cover: Entry = fact(
  'cover',
  '{place: word roof|sides|ends}',
  'A covering of the roof, the sides or the ends.',
  'cover roof with film-uv-200 { fastened by channel-spring every 4 ft; tension 150 N/m }',
  {
    many: true,
    facts: [
      fact('with', `{item: item ${skins}}`, 'The film, mesh or sheet.', 'with film-uv-200', needed),
      fact('layers', '{value: count}', 'One film or two.', 'layers 1'),
      fact(
        'from',
        '{value: length}',
        'For sides and ends: starts at this height over the ground.',
        'from 1 ft',
      ),
      fact(
        'up',
        'to {value: length}',
        'For sides and ends: ends at this height over the ground.',
        'up to 3 ft',
      ),
      fact(
        'fastened',
        'by {item: item fastening} [every {value: length}] [since {since: date}]',
        'What holds its edges, for single pieces (or for the screws of a channel or board) how far apart, and since when, where it is not as old as the film.',
        'fastened by channel-spring every 4 ft',
      ),
      { ...screwed, doc: 'The screws of the channel or board that holds its edges.' },
      fact(
        'strapped',
        'by {item: item fastening} [every {value: length}] [since {since: date}]',
        'Straps or ropes over the film, and since when, where they are not as old as the film. Left out, one strap between every two bows.',
        'strapped by strap-25 every 4 ft',
      ),
      fact('taped', '[along {value: text}]', 'Laps or edges are taped.', 'taped along "the ridge lap"'),
      fact('tension', '{value: line-load}', 'Pull when it is put on, per length of edge.', 'tension 150 N/m'),
      fact(
        'installed',
        '{value: date}',
        'The day it went on; renewal is counted from it.',
        'installed 2026-03-01',
      ),
      fact(
        'roll',
        '{value: length}',
        'Width of the roll as bought, where it is to be one of several.',
        'roll 24 ft',
      ),
      fact('lap', '{value: length}', 'Overlap where two widths or sheets meet.', 'lap 8 in'),
      fact(
        'fitted',
        'at {value: temperature}',
        'Temperature of the film on the day it was pulled tight.',
        'fitted at 18 degC',
      ),
      fact(
        'rolled',
        'up to {value: length}',
        'Sides that can be rolled or tied up, to this height.',
        'rolled up to 4 ft',
      ),
      sacrificial,
    ],
  },
);

export const sides: Entry = fact(
  'sides',
  '{value: word open|clad|screened}',
  'Whether wind comes in at the sides: open, clad with film or sheet, or screened with mesh.',
  'sides open',
);

export const ends: Entry = fact(
  'ends',
  '{value: word open|clad}',
  'Whether the two ends are open or clad.',
  'ends clad { door 3 ft by 6 ft 6 in }',
  {
    facts: [
      fact('door', '{width: length} by {height: length}', 'A door in one end.', 'door 3 ft by 6 ft 6 in', {
        many: true,
        facts: [
          fact(
            'from',
            'side {value: length}',
            'Distance of its opening from the left side, seen from the front. Left out, it is in the middle.',
            'from side 1 ft',
          ),
          fact(
            'at',
            '{value: word front|back|both-ends}',
            'The end it is in; the front when left out.',
            'at both-ends',
          ),
          fact('of', `{item: item ${members}}`, 'What its leaf is framed of.', 'of lumber-1x4'),
          fact('hinged', 'with {item: item supply of hinge}', 'Its hinges.', 'hinged with strap-hinge-200mm'),
          fact('latched', 'with {item: item supply of latch}', 'Its latch.', 'latched with gate-latch-100mm'),
        ],
      }),
    ],
  },
);

export const crop: Entry = fact(
  'crop',
  '{name: word *}',
  'What grows under it, how much of it hangs from the frame, how tall it gets and how near the side it stands.',
  'crop tomatoes hung 15 kg/m2 { height 6 ft; from side 2 ft }',
  {
    many: true,
    facts: [
      fact(
        'hung',
        '{value: mass-per-area}',
        'Mass of crop hung from the frame, per area of ground.',
        'hung 15 kg/m2',
      ),
      fact('height', '{value: length}', 'Height it grows to.', 'height 6 ft'),
      fact('from', 'side {value: length}', 'Distance of the outermost row from the side.', 'from side 2 ft'),
    ],
  },
);

const place = (word: string, doc: string, example: string): Entry =>
  fact(
    word,
    '[{width: length} by {length: length}]',
    `${doc} Width across the house by length along it.`,
    example,
    {
      many: true,
      facts: [
        fact('name', '{value: text}', 'What it is called.', 'name "plug bench"'),
        fact('height', '{value: length}', 'Height over the ground.', 'height 30 in'),
        fact(
          'from',
          'side {value: length}',
          'Distance of the first one from the left side. Left out, they are spread evenly.',
          'from side 2 ft',
        ),
        fact(
          'starts',
          'at {value: length}',
          'Distance of its near end from the front of the house. Left out, it stands in the middle.',
          'starts at 2 ft',
        ),
        fact('clearance', '{value: length}', 'Room to keep free above it.', 'clearance 4 ft'),
        fact(
          'count',
          '{value: count}',
          'How many of them, side by side, the last as far from the right side as the first from the left.',
          'count 2',
        ),
      ],
    },
  );

export const placed: readonly Entry[] = [
  place('bench', 'A bench or table under the shelter.', 'bench 4 ft by 36 ft { height 30 in }'),
  place('bed', 'A bed in the ground under the shelter.', 'bed 3 ft by 40 ft { count 3 }'),
  place('tank', 'A growing or water tank under the shelter.', 'tank 1.2 m by 2.4 m { height 0.6 m }'),
  place(
    'obstacle',
    'Something to stay clear of.',
    'obstacle { name "standpipe"; height 4 ft; from side 1 ft }',
  ),
];

export const water: readonly Entry[] = [
  fact(
    'gutter',
    '{where: word sides|between}',
    'A gutter along the eaves, or between two shelters.',
    'gutter sides across 4 in',
    {
      many: true,
      facts: [
        fact('across', '{value: length}', 'Width at its top.', 'across 4 in'),
        fact('depth', '{value: length}', 'Depth.', 'depth 3 in'),
        fact('fall', '{value: slope}', 'Fall along its length.', 'fall 1:100'),
        fact('to', '{value: text}', 'Where the water goes.', 'to "the lower tank"'),
      ],
    },
  ),
  fact(
    'irrigation',
    '{value: word none|drip|sprinkler|hand}',
    'How water comes back to the crop that the roof keeps dry.',
    'irrigation drip',
  ),
];
