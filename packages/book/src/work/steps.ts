/**
 * The order of work. Orders, tools and hands are common practice of the trade, no source; what is done comes
 * from the model, so a house without a ridge has no ridge to put up.
 */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { feetOf, lengthText, madeOf, plural, railsOf } from '../words.ts';
import { beforeCover, covers } from './cover-step.ts';
import { footStep } from './foot-step.ts';
import type { WorkStep } from './work-step.ts';

/** Every step the shelter needs, in order. */
export function workSteps(shelter: Shelter, system: System): readonly WorkStep[] {
  const ownFoot = shelter.roof.type === 'bows' ? shelter.roof.foot?.id : undefined;
  return [
    settingOut(),
    cutting(shelter),
    ...bending(shelter, system),
    ...feetOf(shelter).map((foot) => footStep(foot, foot.id === ownFoot, system)),
    ...posts(shelter, system),
    ...filling(shelter, system),
    ...innerPosts(shelter, system),
    ...ridge(shelter, system),
    ...roof(shelter, system),
    ...along(shelter),
    ...bracing(shelter),
    ...(shelter.covers.length > 0 ? [beforeCover(shelter)] : []),
    ...covers(shelter, system),
    ...inflating(shelter),
    ...caps(shelter, system),
    {
      title: 'Walk round it',
      does: ['Go through the inspection list with a pencil, and keep the page.'],
      tools: ['pencil', 'spanner', 'screwdriver'],
      hands: 1,
    },
  ];
}

/** Caps stand by themselves: set down, and weighed down one by one. */
function caps({ roof }: Shelter, system: System): readonly WorkStep[] {
  if (roof.type !== 'cap') return [];
  const { kind, mass } = roof.foot;
  const weight = mass === undefined ? 'a bag or block' : format(mass, 'mass', system);
  return [
    {
      title: `Set ${plural(roof.stations.length - 1, 'cap')}`,
      does: [
        'Rake the ground level along both lines of pegs and set the caps end to end, rims flat on the soil.',
        kind === 'ballast'
          ? `Lay ${weight} against each rim of a cap before you let go of it.`
          : 'Hold each cap down on both sides before you let go of it.',
      ],
      tools: ['rake', 'string line', 'gloves'],
      hands: 2,
      caution: 'A sheet is a sail: do not carry caps in wind.',
    },
  ];
}

const settingOut = (): WorkStep => ({
  title: 'Set out',
  does: [
    'Stretch a line where the left row stands and mark peg L1; measure every other peg from it, not from its neighbour.',
    'Make the corners square by the diagonals of the setting-out page, then mark the rest.',
  ],
  tools: ['long tape', 'string line', 'pegs', 'hammer', 'level'],
  hands: 2,
  caution: 'Look for buried services before anything goes into the ground.',
});

function cutting(shelter: Shelter): WorkStep {
  const tools = ['tape', 'marker', 'gloves', 'eye protection'];
  if (madeOf(shelter, ['pvc', 'polyethylene'])) tools.push('pipe cutter or fine saw');
  if (madeOf(shelter, ['steel', 'aluminium'])) tools.push('hacksaw or tube cutter', 'file');
  if (madeOf(shelter, ['timber', 'bamboo', 'green-wood'])) tools.push('wood saw', 'dust mask');
  return {
    title: 'Cut',
    does: [
      'Cut by the cut sheet, long pieces first, and mark each piece with what it is.',
      `Take the burr off every end: a sharp edge cuts ${shelter.covers.some(({ skin }) => skin.kind === 'film') ? 'film and hands' : 'hands'}.`,
    ],
    tools,
    hands: 1,
  };
}

function bending({ roof: of }: Shelter, system: System): readonly WorkStep[] {
  if (of.type !== 'bows' || of.shape === 'elastic') return [];
  if (of.shape === 'laminated')
    return [
      {
        title: 'Laminate the bows',
        does: [
          'Set blocks on a floor along the shape of the bend template.',
          'Bend the dry strips round the blocks once to try them, then glue and clamp, and leave each bow on the blocks until the glue has set.',
        ],
        tools: ['flat floor', 'blocks', 'clamps', 'waterproof glue'],
        hands: 2,
        caution: 'Glue gives off fumes: ventilate.',
      },
    ];
  return [
    {
      title: `Bend ${plural(of.stations.length, 'bow')}`,
      does: [
        'Mark the pipe by the bend template; bend one and lay it on the floor shape before the others.',
        `The finished bow spans ${lengthText(of.span, system)} and rises ${lengthText(of.rise, system)}.`,
      ],
      tools: ['pipe bender', 'tape', 'marker', 'chalked floor shape'],
      hands: 2,
    },
  ];
}

function posts({ sidePosts, eaveRail }: Shelter, system: System): readonly WorkStep[] {
  if (!sidePosts) return [];
  const rail = eaveRail ? ' Put the rails on the tops, joints over posts.' : '';
  return [
    {
      title: 'Side posts',
      does: [
        `Tops ${lengthText(sidePosts.height, system)} above the ground, to a level line from end to end.${rail}`,
      ],
      tools: ['line level or water level', 'saw', 'drill', 'spanners', 'step ladder'],
      hands: 2,
    },
  ];
}

/** The inner lines of a grid, which reach up under the roof. */
function innerPosts({ inner = [] }: Shelter, system: System): readonly WorkStep[] {
  return inner.map(({ lines, posts: row, member }) => ({
    title: lines.length === 1 ? 'Inner line of posts' : 'Inner lines of posts',
    does: [
      `${plural(lines.length, 'line')}, ${lines.map(({ x }) => lengthText(x, system)).join(' and ')} from the left side; tops ${lengthText(row?.height ?? 0, system)} above the ground, to a string from end to end.`,
      `Put the rails of ${member.title} on the tops, joints over posts.`,
    ],
    tools: ['line level or water level', 'saw', 'drill', 'spanners', 'step ladder'],
    hands: 2,
  }));
}

/** Concrete, rods or timber inside hollow members. */
function filling(
  { sidePosts, roof: of, ridge: rail, inner = [] }: Shelter,
  system: System,
): readonly WorkStep[] {
  const reach = (upTo: number) => `up to ${lengthText(upTo, system)} above the ground`;
  const rows = [sidePosts, rail?.posts, inner[0]?.posts].flatMap((row) =>
    row?.filled
      ? [
          {
            what: 'posts',
            reach: row.filled.upTo >= row.height ? 'to the top' : reach(row.filled.upTo),
            filled: row.filled,
          },
        ]
      : [],
  );
  const bows =
    of.type === 'bows' && of.filled
      ? [{ what: 'bows', reach: reach(of.filled.upTo), filled: of.filled }]
      : [];
  return [...rows, ...bows].map(({ what, reach, filled }) => ({
    title: `Fill the ${what}`,
    does: [
      `${[filled.member?.title ?? filled.with, ...(filled.member && filled.with === 'concrete' ? ['concrete round it'] : [])].join(', ')}, ${reach}.`,
      ...(filled.with === 'concrete'
        ? ['Stiff mix, a little at a time, tapped down; leave it a week before it carries anything.']
        : []),
    ],
    tools: ['funnel', 'rod', 'mallet', 'gloves'],
    hands: 2,
    ...(filled.with === 'concrete' ? { caution: 'Wet cement burns skin and eyes.' } : {}),
  }));
}

function inflating({ roof: of }: Shelter): readonly WorkStep[] {
  if (of.type !== 'inflated') return [];
  return [
    {
      title: 'Blow it up',
      does: [
        'All four edges fixed and taped first; start the fan, feel along the edges for leaks and tape them.',
        'Put something in sight of the house that shows when the fan stands still.',
      ],
      tools: ['cloth tape', 'spare fuse'],
      hands: 2,
      caution:
        'Without the fan the films hang down and fill like a tank: somebody must be able to let water out from below.',
    },
  ];
}

function ridge({ ridge: rail }: Shelter, system: System): readonly WorkStep[] {
  if (!rail) return [];
  const height = rail.lines[0] ? ` ${lengthText(rail.lines[0].y, system)} above the ground` : '';
  if (rail.form === 'cable') {
    return [
      {
        title: 'Ridge cable',
        does: [
          `Posts first, then the cable over them,${height}; three clips on each loop, saddles on the long part.`,
          rail.tension === undefined
            ? 'Pull it tight with a puller.'
            : `Pull it to ${format(rail.tension, 'force', system)}; check the pull by the sag, and again after a week.`,
        ],
        tools: ['cable puller', 'spanner', 'cable cutter', 'ladder', 'gloves', 'eye protection'],
        hands: 2,
        caution: 'A cable under pull whips when it lets go: nobody stands in line with it.',
      },
    ];
  }
  return [
    {
      title: 'Ridge',
      does: [`Posts plumb and braced, then the ridge on top of them,${height}, joints over posts.`],
      tools: ['level', 'drill', 'spanners', 'ladder', 'props'],
      hands: 2,
      caution: 'Level ground under the ladder, and somebody holding it.',
    },
  ];
}

function roof({ roof: of, ridge: rail }: Shelter, system: System): readonly WorkStep[] {
  if (of.type === 'cap' || of.type === 'inflated') return [];
  const count = of.stations.length;
  const tied = rail?.tied ? ' and tied to it' : '';
  const onRidge = rail ? ` Each rests on the ridge${tied}.` : '';
  if (of.type === 'rafters') {
    return [
      {
        title: `${plural(count, 'pair')} of rafters`,
        does: [
          `Make up every pair alike on the ground, then raise the two end pairs and prop them, and the others to a line between them.${onRidge}`,
        ],
        tools: ['drill', 'spanners', 'string line', 'props', 'ladders'],
        hands: 3,
        caution: 'Keep long pieces away from power lines while they are carried and raised.',
      },
    ];
  }
  const elastic = of.shape === 'elastic';
  const joints = [...of.joints, ...(of.crownFitting ? [of.crownFitting] : [])];
  const glued = joints.some((joint) => joint.item.form === 'socket') && of.member.material.family === 'pvc';
  return [
    {
      title: `${plural(count, 'bow')}`,
      does: [
        ...(joints.length > 0
          ? [
              `Join the pieces on the ground by the cut sheet${glued ? '; prime, glue, and let the glue cure before anything is bent' : ''}.`,
            ]
          : []),
        elastic
          ? `Put one end over its foot, walk the other round and over its own. The two end bows first, then the others to a line between the crowns.${onRidge}`
          : `Raise the two end bows and prop them, then the others to a line between the crowns.${onRidge}`,
        `Each spans ${lengthText(of.span, system)} and rises ${lengthText(of.rise, system)}; measure the first.`,
      ],
      tools: ['ladder', 'string line', 'tape', ...(glued ? ['primer and cement'] : []), 'eye protection'],
      hands: elastic ? 2 : 3,
      caution: elastic
        ? 'Sprung pipe whips back: two hold it, and nobody stands over the free end.'
        : 'Keep long pieces away from power lines while they are carried and raised.',
    },
  ];
}

function along(shelter: Shelter): readonly WorkStep[] {
  const rails = railsOf(shelter).filter((rail) => rail.role === 'purlin' || rail.role === 'baseboard');
  if (rails.length === 0) return [];
  const names = rails.map((rail) => `${plural(rail.lines.length, 'line')} of ${rail.member.title}`);
  return [
    {
      title: 'Purlins and boards along',
      does: [
        `${names.join('; ')}. Measure the bays at the top too before they are fixed, so that frames stand upright.`,
      ],
      tools: ['tape', 'drill', 'spanners', 'ladder'],
      hands: 2,
    },
  ];
}

function bracing({ braces }: Shelter): readonly WorkStep[] {
  if (braces.length === 0) return [];
  const cable = braces.some((brace) => brace.member.kind === 'cable');
  return [
    {
      title: 'Braces and guys',
      does: [
        'Plumb the end frames with a level and hold them so until every brace is fixed.',
        ...(cable ? ['Pull wires up by pairs, so that nothing is drawn out of plumb.'] : []),
      ],
      tools: [
        'level',
        'drill',
        'spanners',
        ...(cable ? ['cable puller', 'cable cutter', 'eye protection'] : []),
      ],
      hands: 2,
    },
  ];
}
