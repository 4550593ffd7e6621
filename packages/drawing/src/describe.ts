/** One line of words for every part of a shelter: for keys, tool tips and screen readers. */
import { format, type System } from '@tautline/quantity';
import type {
  CableItem,
  Cover,
  EndFrames,
  Foot,
  MemberItem,
  Posts,
  Rail,
  Roof,
  Shelter,
  Thing,
} from '@tautline/shelter';

export interface Described {
  readonly part: string;
  readonly words: string;
}

const footWords: Readonly<Record<Foot['kind'], string>> = {
  stub: 'stub',
  driven: 'driven leg',
  hole: 'post hole',
  concrete: 'concrete footing',
  deadman: 'buried deadman',
  screw: 'screw anchor',
  ballast: 'ballast',
  bearing: 'bearing pad',
  poked: 'end poked into the soil',
};

const roleWords: Readonly<Record<Rail['role'], string>> = {
  ridge: 'Ridge',
  eave: 'Eave rail',
  purlin: 'Purlin',
  baseboard: 'Baseboard',
  grid: 'Grid rail',
};

const shapeWords = {
  elastic: 'sprung',
  arc: 'bent to an arc',
  'cold-bent': 'cold-bent',
  laminated: 'laminated',
  pointed: 'pointed',
} as const;

/** Every part in the order a reader meets it: frame from the top down, then skins, then what grows below. */
export function describeParts(shelter: Shelter, system: System): readonly Described[] {
  const m = (si: number): string => format(si, 'length', system);
  const { roof, sidePosts, eaveRail, ridge } = shelter;
  const rows: Described[] = [{ part: roof.id, words: roofWords(roof, m) }];
  if (roof.type === 'rafters' && roof.tie)
    rows.push({
      part: roof.tie.id,
      words: `Rafter ties: ${roof.stations.length} of ${roof.tie.member.title}, ${roof.tie.height > 0 ? `${m(roof.tie.height)} above the eave` : 'at the eave'}`,
    });
  const foot = (of: Foot | undefined, whose: string, side?: string): void => {
    if (of)
      rows.push({
        part: of.id,
        words: `${whose}: ${footLine(of, system)}${side ? `, ${side}` : ''}`,
      });
  };
  const posts = (of: Posts, whose: string): void => {
    const count = of.lines.length * of.stations.length;
    rows.push({
      part: of.id,
      words: `${whose}: ${count}${of.lines.length > 2 ? ` in ${of.lines.length} lines` : ''} of ${of.member.title}, ${m(of.height)} above ground, every ${m(of.spacing)}${of.filled ? `, filled with ${of.filled.with}` : ''}${weak(of)}`,
    });
    foot(of.foot, `Foot of ${whose.toLowerCase()}`);
  };
  if (roof.type === 'bows' || roof.type === 'rafters') {
    for (const joint of roof.joints)
      rows.push({
        part: joint.id,
        words: `Joint: ${joint.item.title}, ${m(joint.at)} along the ${roof.type === 'bows' ? 'bow' : 'rafter line'} from the left${joint.assumed ? ' (place assumed)' : ''}${weak(joint)}`,
      });
    const named =
      roof.type === 'bows' ? { crown: roof.crownFitting } : { peak: roof.peakJoint, eaves: roof.eaveJoint };
    for (const [place, joint] of Object.entries(named))
      if (joint)
        rows.push({ part: joint.id, words: `Joint at the ${place}: ${joint.item.title}${weak(joint)}` });
    foot(roof.foot, 'Foot of bows', 'each side');
  } else if (roof.type === 'cap') foot(roof.foot, 'Rim of caps', 'each side of each cap');
  if (ridge) {
    rows.push({ part: ridge.id, words: railWords(ridge, m, system) });
    if (ridge.posts) posts(ridge.posts, 'Ridge posts');
    foot(ridge.endAnchor, 'Ridge end anchor');
  }
  if (eaveRail) {
    rows.push({ part: eaveRail.id, words: railWords(eaveRail, m, system) });
    foot(eaveRail.endAnchor, 'Eave end anchor');
  }
  if (sidePosts) posts(sidePosts, 'Side posts');
  for (const rail of shelter.inner ?? []) {
    rows.push({ part: rail.id, words: railWords(rail, m, system) });
    if (rail.posts) posts(rail.posts, 'Inner posts');
  }
  for (const purlin of shelter.purlins) rows.push({ part: purlin.id, words: railWords(purlin, m, system) });
  if (shelter.baseboards)
    rows.push({ part: shelter.baseboards.id, words: railWords(shelter.baseboards, m, system) });
  for (const brace of shelter.braces) {
    const name = { brace: 'Brace', guy: 'Guy', tie: 'Tie' }[brace.role];
    rows.push({
      part: brace.id,
      words: `${name}: ${brace.count} of ${brace.member.title}, ${brace.plane === 'along' ? 'along the house' : 'across the house'}${weak(brace)}`,
    });
    foot(brace.foot, `${name} anchor`);
  }
  const { endFrames, doors = [] } = shelter;
  if (endFrames) {
    rows.push({ part: endFrames.id, words: endWords(endFrames, m) });
    foot(endFrames.foot, 'Foot of end uprights');
  }
  for (const door of doors)
    rows.push({
      part: door.id,
      words: `Door: ${m(door.width)} wide, ${m(door.height)} high, ${{ front: 'in the front end', back: 'in the back end', both: 'in both ends' }[door.end]}`,
    });
  for (const cover of shelter.covers) rows.push({ part: cover.id, words: coverWords(cover, m) });
  for (const crop of shelter.crops)
    rows.push({
      part: crop.id,
      words: `Crop: ${crop.name}${crop.height > 0 ? `, up to ${m(crop.height)} tall` : ''}, first row ${m(crop.fromSide)} from the side`,
    });
  for (const thing of shelter.things) rows.push({ part: thing.id, words: thingWords(thing, m) });
  const seen = new Set<string>();
  return rows.filter(({ part }) => !seen.has(part) && seen.add(part));
}

function roofWords(roof: Roof, m: (si: number) => string): string {
  const count = roof.stations.length;
  switch (roof.type) {
    case 'bows':
      return `Bows: ${count} of ${roof.member.title}, ${shapeWords[roof.shape]}, ${m(roof.length)} along the curve, every ${m(roof.spacing)}${roof.wrapped ? ', wrapped' : ''}${roof.filled ? `, filled with ${roof.filled.with} up to ${m(roof.filled.upTo)}` : ''}${weak(roof)}`;
    case 'rafters':
      return `Rafters: ${count * (roof.form === 'gable' ? 2 : 1)} of ${roof.member.title}, ${m(roof.length)} each, every ${m(roof.spacing)}${roof.camber > 0 ? `, cambered ${m(roof.camber)}` : ''}${roof.wrapped ? ', wrapped' : ''}${weak(roof)}`;
    case 'cap':
      return `Caps: ${count - 1} of ${roof.sheet.title}, each ${m(roof.spacing)} long`;
    case 'inflated':
      return `Inflated roof: two films, bulge ${m(roof.rise)}${roof.straps ? `, straps every ${m(roof.straps.spacing)}` : ''}`;
  }
}

function footLine(foot: Foot, system: System): string {
  const m = (si: number): string => format(si, 'length', system);
  const thing = foot.stub?.title ?? foot.anchor?.title;
  return (
    [
      `${footWords[foot.kind]}${thing ? ` of ${thing}` : ''}`,
      ...(foot.length === undefined ? [] : [`${m(foot.length)} long`]),
      ...(foot.driven > 0 ? [`${m(foot.driven)} deep`] : []),
      ...leanWords(foot, system),
      ...(foot.across === undefined ? [] : [`${m(foot.across)} across`]),
      ...(foot.mass === undefined || foot.kind !== 'ballast' ? [] : [format(foot.mass, 'mass', system)]),
    ].join(', ') + weak(foot)
  );
}

/** How far from the level a foot leans, where it is not upright. */
const leanWords = ({ lean = Math.PI / 2 }: Foot, system: System): readonly string[] =>
  Math.abs(lean - Math.PI / 2) < 1e-3
    ? []
    : [`leaning ${lean < Math.PI / 2 ? 'out' : 'in'} at ${format(lean, 'angle', system)}`];

function railWords(rail: Rail, m: (si: number) => string, system: System): string {
  const form = rail.form === 'cable' ? ' cable' : '';
  const count = rail.lines.length > 1 ? `${rail.lines.length} lines of ` : '';
  const pull = rail.tension === undefined ? '' : `, pulled to ${format(rail.tension, 'force', system)}`;
  return `${roleWords[rail.role]}${form}: ${count}${rail.member.title}, carried every ${m(rail.span)}${pull}${rail.tied ? '' : ', frames rest on it untied'}${weak(rail)}`;
}

function coverWords(cover: Cover, m: (si: number) => string): string {
  const place = { roof: 'Roof cover', sides: 'Side cover', ends: 'End cover' }[cover.place];
  const layers = cover.layers === 2 ? ' in two layers' : '';
  const reach =
    cover.place === 'roof' ? `, ${m(cover.developedWidth)} wide along the arc` : `, up to ${m(cover.upTo)}`;
  const strapped = cover.straps && cover.straps.item.title === cover.fastening?.title;
  const held = cover.fastening && !strapped ? `, held by ${cover.fastening.title}` : '';
  const straps = cover.straps ? `, ${cover.straps.item.title} every ${m(cover.straps.spacing)}` : '';
  return `${place}: ${cover.skin.title}${layers}${reach}${held}${straps}${weak(cover)}`;
}

function endWords(ends: EndFrames, m: (si: number) => string): string {
  const rail = ends.rail ? `, a rail of ${ends.rail.member.title} ${m(ends.rail.height)} up` : '';
  return `End frames: ${ends.uprights.length} uprights of ${ends.member.title} in each end${rail}`;
}

function thingWords(thing: Thing, m: (si: number) => string): string {
  const title = thing.name.charAt(0).toUpperCase() + thing.name.slice(1);
  const count = thing.lefts.length > 1 ? `${thing.lefts.length} of ` : '';
  const high = thing.height > 0 ? `, ${m(thing.height)} high` : '';
  const free = thing.clearance > 0 ? `, ${m(thing.clearance)} to keep free above` : '';
  return `${title}: ${count}${m(thing.width)} across by ${m(thing.length)} along${high}${free}`;
}

const weak = (part: { readonly sacrificial?: boolean }): string =>
  part.sacrificial ? ', meant to give way first' : '';

/** Depth across the member in the plane of the frame, m; for round ones the outside diameter. */
export function depthOf(member: MemberItem | CableItem): number {
  if (member.kind === 'cable') return member.diameter;
  const { section } = member;
  return section.shape === 'rectangle' ? section.depth : section.outside;
}

/** Width of the member as seen from above or from the side of the house, m. */
export function breadthOf(member: MemberItem | CableItem): number {
  if (member.kind === 'cable') return member.diameter;
  const { section } = member;
  return section.shape === 'rectangle' ? section.breadth : section.outside;
}
