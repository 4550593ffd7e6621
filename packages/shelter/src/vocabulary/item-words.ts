/** What can be said of materials and of the things a yard sells. */
import type { Entry } from './entry.ts';
import { ownPrice } from './file-words.ts';
import { fact, members, needed, several } from './write.ts';

export const materialFacts: readonly Entry[] = [
  fact(
    'family',
    '{value: word pvc|polyethylene|steel|aluminium|timber|bamboo|green-wood|glass-fibre|polycarbonate|concrete|other}',
    'What sort of stuff it is: creep, rot, rust and heat are judged by it.',
    'family pvc',
    needed,
  ),
  fact('density', '{value: density}', 'Mass per volume.', 'density 1400 kg/m3', needed),
  fact(
    'modulus',
    '{value: stress}',
    'Stiffness in bending for short loads, at 23 degC.',
    'modulus 400 ksi',
    needed,
  ),
  fact(
    'creep-modulus',
    '{value: stress}',
    'What is left of the stiffness after years under load. Left out, it does not creep.',
    'creep-modulus 140 ksi',
  ),
  fact(
    'bending-strength',
    '{value: stress}',
    'Bending stress at which it is taken as failed: yield, or the characteristic strength.',
    'bending-strength 7 ksi',
    needed,
  ),
  fact(
    'sustained-strength',
    '{value: stress}',
    'Bending stress that may stay locked in for years.',
    'sustained-strength 2 ksi',
  ),
  fact('shear-strength', '{value: stress}', 'Strength in shear.', 'shear-strength 4 ksi'),
  fact(
    'bearing-strength',
    '{value: stress}',
    'Strength in bearing across the grain or on the wall.',
    'bearing-strength 400 psi',
  ),
  fact(
    'expands',
    '{by: length} per {length: length} per degree',
    'Growth of a length for each degree Celsius.',
    'expands 0.06 mm per 1 m per degree',
  ),
  fact(
    'at',
    '{temperature: temperature} strength {strength: ratio} stiffness {stiffness: ratio}',
    'What is left of strength and stiffness at a temperature, against 23 degC.',
    'at 60 degC strength 0.22 stiffness 0.5',
    several,
  ),
  fact('treated', '', 'Treated for use in the ground.', 'treated'),
];

const material = fact(
  'material',
  '{item: item material}',
  'The material it is made of.',
  'material pvc',
  needed,
);
const soldLong = fact(
  'sold',
  '{value: length} long',
  'A length it is sold in. Say it once for each.',
  'sold 20 ft long',
  several,
);
const soldWide = fact(
  'sold',
  '{width: length} wide [by {length: length} long]',
  'A roll it is sold in. Say it once for each.',
  'sold 24 ft wide by 100 ft long',
  several,
);
const life = fact('life', '{value: time}', 'How long it lasts in full sun.', 'life 4 yr', needed);
const light = fact('light', '{value: ratio}', 'Share of the light it lets through when new.', 'light 0.88');
const thickness = fact('thickness', '{value: film-thickness}', 'Thickness.', 'thickness 6 mil', needed);
const massPerArea = fact('weighs', '{value: mass-per-area}', 'Mass per area.', 'weighs 90 g/m2', needed);
const across = fact('across', '{value: length}', 'Diameter.', 'across 12 mm', needed);
const grows = fact(
  'expands',
  '{by: length} per {length: length} per degree',
  'Growth of a length for each degree Celsius.',
  'expands 0.18 mm per 1 m per degree',
);

const bends = fact(
  'bends',
  'to {value: length}',
  'Least radius of a cold bend, to the centre line, with the usual bender.',
  'bends to 5 in',
);
const memberFacts: readonly Entry[] = [material, soldLong, bends, ownPrice];
const galvanised = fact('galvanised', '', 'Zinc coated.', 'galvanised');

export const itemFacts: Readonly<Record<string, readonly Entry[]>> = {
  pipe: [
    fact('outside', '{value: length}', 'Outside diameter.', 'outside 1.315 in', needed),
    fact('wall', '{value: length}', 'Wall thickness.', 'wall 0.133 in', needed),
    ...memberFacts,
    fact(
      'swaged',
      '{value: length}',
      'One end is narrowed or belled and slides this far into the next length.',
      'swaged 4 in',
    ),
    galvanised,
  ],
  rod: [across, ...memberFacts, galvanised],
  pole: [
    fact('butt', '{value: length}', 'Diameter at the thick end.', 'butt 90 mm', needed),
    fact('tip', '{value: length}', 'Diameter at the thin end.', 'tip 60 mm'),
    fact('wall', '{value: length}', 'Wall thickness of a hollow pole such as bamboo.', 'wall 8 mm'),
    ...memberFacts,
  ],
  lumber: [
    fact(
      'depth',
      '{value: length}',
      'The larger side as dressed; it stands upright in a rafter or rail.',
      'depth 3-1/2 in',
      needed,
    ),
    fact('breadth', '{value: length}', 'The smaller side as dressed.', 'breadth 1-1/2 in', needed),
    ...memberFacts,
    fact('treated', '', 'Treated for use in the ground.', 'treated'),
  ],
  cable: [
    across,
    fact('breaks', 'at {value: force}', 'Least breaking load.', 'breaks at 9.6 kN', needed),
    fact(
      'modulus',
      '{value: stress}',
      'Stiffness of the made-up cable, on its metal area.',
      'modulus 110 GPa',
      needed,
    ),
    fact('metal', '{value: area}', 'Area of metal in the cross-section.', 'metal 6.9 mm2', needed),
    fact('weighs', '{value: mass-per-length}', 'Mass per length.', 'weighs 58 g/m', needed),
    soldLong,
    ownPrice,
  ],
  film: [
    thickness,
    fact('density', '{value: density}', 'Mass per volume.', 'density 925 kg/m3', needed),
    fact(
      'grade',
      '{value: word greenhouse|construction}',
      'greenhouse: stabilised against sunlight. construction: not.',
      'grade greenhouse',
      needed,
    ),
    life,
    fact(
      'yields',
      'at {value: stress}',
      'Stress at which it stays stretched, at 23 degC.',
      'yields at 12 MPa',
      needed,
    ),
    fact('modulus', '{value: stress}', 'Stiffness at 23 degC.', 'modulus 200 MPa', needed),
    grows,
    light,
    soldWide,
    ownPrice,
  ],
  mesh: [
    fact('porosity', '{value: ratio}', 'Share of open area.', 'porosity 0.5', needed),
    massPerArea,
    fact('strength', '{value: line-load}', 'Pull a strip carries, per width.', 'strength 8 kN/m', needed),
    life,
    fact('shade', '{value: ratio}', 'Share of the light it keeps out.', 'shade 0.3', needed),
    soldWide,
    ownPrice,
  ],
  sheet: [
    massPerArea,
    thickness,
    fact('covers', '{value: length}', 'Width one sheet covers, lap taken off.', 'covers 24 in', needed),
    fact('spans', '{value: length}', 'Greatest distance between purlins.', 'spans 24 in', needed),
    fact(
      'yields',
      'at {value: stress}',
      'Stress at which it stays bent or breaks. Without it nothing is worked out of a gust on the sheet.',
      'yields at 60 MPa',
    ),
    fact(
      'waves',
      '{depth: length} deep every {pitch: length}',
      'Waves of a corrugated sheet, outside to outside, and how far apart. Left out, it is flat.',
      'waves 1/2 in deep every 2-2/3 in',
    ),
    light,
    life,
    soldLong,
    ownPrice,
  ],
  coupler: jointFacts('socket|sleeve|clamp|bolt|plate|lashing', 'socket'),
  fitting: jointFacts('cross|tee|corner|peak|clamp|bolt|plate|lashing', 'cross'),
  fastening: [
    fact(
      'form',
      '{value: word channel|board|strap|staple|clip|screw|rope}',
      'What sort of fastening it is.',
      'form channel',
      needed,
    ),
    fact('holds', '{value: line-load}', 'Pull it holds per length of edge.', 'holds 4 kN/m'),
    fact('each-holds', '{value: force}', 'Pull one piece holds.', 'each-holds 900 N'),
    fact('edge', '{value: length}', 'Film taken up at each edge.', 'edge 4 in'),
    fact(
      'life',
      '{value: time}',
      'Time in full sun after which a strap, rope or plastic clip holds half of what it held when new.',
      'life 5 yr',
    ),
    fact(
      'fibre',
      '{value: word polyester|polypropylene|nylon}',
      'What a strap or rope is made of.',
      'fibre polyester',
    ),
    fact('across', '{value: length}', 'Diameter of a screw over its thread.', 'across 1/4 in'),
    fact('long', '{value: length}', 'Length of a screw under its head.', 'long 2 in'),
    fact('washer', '{value: length}', 'Diameter of the washer of a screw.', 'washer 5/8 in'),
    soldLong,
    ownPrice,
  ],
  anchor: [
    fact('form', '{value: word screw|plate|block|pad}', 'What sort of anchor it is.', 'form screw', needed),
    fact('across', '{value: length}', 'Diameter of its helix, plate or block.', 'across 100 mm'),
    fact('length', '{value: length}', 'Whole length.', 'length 0.75 m'),
    fact('weighs', '{value: mass}', 'Mass of one.', 'weighs 35 kg'),
    ownPrice,
  ],
  supply: [
    fact(
      'form',
      '{value: word concrete|wire-clip|screw|wrapping|cord|hinge|latch|glue}',
      'What it is used for.',
      'form screw',
      needed,
    ),
    fact('makes', '{value: volume}', 'Concrete that one bag makes.', 'makes 0.60 ft3'),
    fact(
      'covers',
      '{value: area}',
      'Joint between boards that one can of glue is enough for.',
      'covers 14 m2',
    ),
    fact(
      'sold',
      '[per pack of {count: count}] [{length: length} long]',
      'So many in a pack, or the length of a roll.',
      'sold per pack of 100',
    ),
    fact(
      'across',
      '{value: length}',
      'Wire or rope that a clip grips; thickness of a screw; width of a strip of wrapping that is wound round.',
      'across 5 mm',
    ),
    fact('length', '{value: length}', 'Length of a screw or a hinge.', 'length 60 mm'),
    fact(
      'usual',
      '{value: word metric|us}',
      'Taken where a shelter does not say which, in files written in these units.',
      'usual metric',
    ),
    ownPrice,
  ],
};

function jointFacts(forms: string, example: string): readonly Entry[] {
  return [
    fact(
      'form',
      `{value: word ${forms}}`,
      'socket and sleeve join in line; cross, tee, corner and peak join at an angle.',
      `form ${example}`,
      needed,
    ),
    fact(
      'fits',
      `{item: item ${members}}`,
      'A member it is made for. Say it once for each.',
      'fits emt-21',
      several,
    ),
    fact('moment', '{value: moment}', 'Bending it carries before it gives.', 'moment 60 N.m', needed),
    fact(
      'pull',
      '{value: force}',
      'Pull along the member it carries before it comes apart.',
      'pull 1.2 kN',
      needed,
    ),
    fact(
      'stiffness',
      '{value: rotational-stiffness}',
      'How stiff it is in turning. Left out, it is taken as stiff as the member.',
      'stiffness 900 N.m/rad',
    ),
    fact(
      'angle',
      '{value: angle} [within {within: angle}]',
      'Angle between its sockets, and how far off it may be. 180 deg is straight through.',
      'angle 120 deg within 4 deg',
    ),
    fact('takes', '{value: length}', 'Length it takes in from each piece.', 'takes 2 in'),
    fact(
      'cord',
      '{value: length}',
      'Cord that tying one takes. It is not bought then, but tied: its cord is bought.',
      'cord 3 m',
    ),
    ownPrice,
  ];
}
