/** What runs straight across a frame from side to side and keeps the sides apart or together. */
import type { Brace, CurvePoint, Shelter } from '@tautline/shelter';
import { arcNear } from './arc-near.ts';
import { type Condition, modulusIn } from './condition.ts';
import type { SystemBuilder } from './frame-system.ts';
import { sectionOf } from './member.ts';

/** Higher over the eave than this a tie is fixed to the roof and not to the heads of the posts, m. */
const atTheEave = 0.02;

/** Pieces of a brace for each frame: those set further apart than the frames give each only a share. */
export function perFrame(shelter: Shelter, rows: number): number {
  const apart = rows > 1 ? shelter.length / (rows - 1) : shelter.length;
  return Math.min(1, shelter.roof.spacing / apart);
}

export const tiesOf = (shelter: Shelter): readonly Brace[] =>
  shelter.braces.filter(({ role, plane }) => role === 'tie' && plane === 'across');

/** Whether a tie meets the roof above its springing. */
export const tiesTheRoof = (shelter: Shelter, tie: Brace): boolean =>
  tie.from.y > shelter.roof.springing + atTheEave;

/** Arc lengths at which ties meet the roof, m. */
export function tiedPlaces(shelter: Shelter, line: readonly CurvePoint[]): readonly number[] {
  return tiesOf(shelter)
    .filter((tie) => tiesTheRoof(shelter, tie))
    .flatMap(({ from, to }) => [arcNear(line, from.x, from.y), arcNear(line, to.x, to.y)]);
}

/**
 * Ties between the two sides, hinged at both ends: between nodes of the roof line, or of the posts where they lie at
 * the eave or lower. A wire only pulls. They are in place before the frame is sprung or loaded.
 */
export function addTies(
  builder: SystemBuilder,
  shelter: Shelter,
  condition: Condition,
  roofNodes: readonly number[],
): void {
  for (const tie of tiesOf(shelter)) {
    const [i, j] = tiesTheRoof(shelter, tie)
      ? ([tie.from, tie.to].map((end) => nearest(builder, roofNodes, end)) as [number, number])
      : ([roofNodes[0]!, roofNodes[roofNodes.length - 1]!].map((head) =>
          onPost(builder, head, tie.from.y),
        ) as [number, number]);
    if (i !== j) addTie(builder, shelter, tie, condition, i, j);
  }
}

function nearest(
  builder: SystemBuilder,
  nodes: readonly number[],
  place: { readonly x: number; readonly y: number },
): number {
  const off = (node: number): number =>
    Math.hypot(builder.nodes[node]!.x - place.x, builder.nodes[node]!.y - place.y);
  return nodes.reduce((best, node) => (off(node) < off(best) ? node : best));
}

/** The node of the post under a head that is nearest to a height, m. */
export function onPost(builder: SystemBuilder, head: number, height: number): number {
  const { x } = builder.nodes[head]!;
  let best = head;
  builder.nodes.forEach((node, index) => {
    if (node.x === x && Math.abs(node.y - height) < Math.abs(builder.nodes[best]!.y - height)) best = index;
  });
  return best;
}

export function addTie(
  builder: SystemBuilder,
  shelter: Shelter,
  tie: Brace,
  condition: Condition,
  i: number,
  j: number,
): void {
  const { member } = tie;
  const share = perFrame(shelter, tie.count);
  const cable = member.kind === 'cable';
  const stiffness = cable
    ? member.modulus * member.area
    : modulusIn(member, condition) * sectionOf(member).area;
  builder.element(
    { i, j, EA: stiffness * share, EI: 0, truss: true, ...(cable ? { tensionOnly: true } : {}) },
    {
      part: tie.id,
      item: member,
      from: 0,
      to: builder.nodes[j]!.x - builder.nodes[i]!.x,
      role: 'tie',
      perFrame: share,
    },
  );
}
