import type { Posts, Shelter } from '@tautline/shelter';
import { type Condition, modulusIn } from './condition.ts';
import { barStiffness, fillingAlong, fillingWeight } from './filling.ts';
import { footGive, givingFeet, holdFoot } from './foot-hold.ts';
import type { SystemBuilder } from './frame-system.ts';
import { sectionOf } from './member.ts';

const divisions = 6;

/**
 * Side posts under the two ends of a bow or rafter pair, smeared to one frame: posts set further apart
 * than the frames give each frame only their share. They stand firm in the ground, or give as it does with `soil`.
 */
export function addSidePosts(
  builder: SystemBuilder,
  shelter: Shelter,
  posts: Posts,
  condition: Condition,
  leftTop: number,
  rightTop: number,
  frameSpacing: number,
  top: 'pinned' | 'rigid',
  soil = false,
): void {
  const give = soil ? footGive(shelter.site, posts.foot, posts.member) : undefined;
  if (give !== undefined) builder.notes.push(givingFeet);
  const share = Math.min(1, frameSpacing / posts.spacing);
  const section = sectionOf(posts.member);
  const modulus = modulusIn(posts.member, condition);
  for (const side of ['left', 'right'] as const) {
    const topNode = side === 'left' ? leftTop : rightTop;
    const head = builder.nodes[topNode]!;
    const height = head.y;
    const nodes: number[] = [];
    for (let k = 0; k < divisions; k++) {
      const y = (height * k) / divisions;
      nodes.push(builder.node({ x: head.x, y, angle: Math.PI / 2 }, posts.id, y));
    }
    nodes.push(topNode);
    for (let k = 0; k < divisions; k++) {
      const last = k === divisions - 1;
      const middle = (height * (k + 0.5)) / divisions;
      const inside = fillingWeight(posts.filled, posts.member, middle);
      builder.element(
        {
          i: nodes[k]!,
          j: nodes[k + 1]!,
          EA: (modulus * section.area + fillingAlong(posts.filled, posts.member, height)) * share,
          EI: (modulus * section.secondMoment + barStiffness(posts.filled, middle)) * share,
          restCurvature: 0,
          ...(last && top === 'pinned' ? { springJ: 0 } : {}),
        },
        {
          part: posts.id,
          item: posts.member,
          from: (height * k) / divisions,
          to: (height * (k + 1)) / divisions,
          role: side === 'left' ? 'left-wall' : 'right-wall',
          perFrame: share,
          ...(inside > 0 ? { inside } : {}),
        },
      );
    }
    const clamped = posts.foot.fixity === 'clamped';
    holdFoot(builder, { node: nodes[0]!, side, part: posts.foot.id, clamped, give, share });
  }
  if (posts.spacing > frameSpacing) {
    builder.notes.push(
      'Posts stand further apart than the frames; the rail shares the frames out between them.',
    );
  }
  if (shelter.eaveRail === undefined) {
    builder.notes.push('No rail along the post heads was said; the frames are taken to sit on the posts.');
  }
}
