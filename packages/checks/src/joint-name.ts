import { type Bows, type JointUse, lengthOf, type Rafters } from '@tautline/shelter';

/** Which joint of a frame it is; twins on both sides of a bow are told apart. */
export function namedJoint(roof: Bows | Rafters, { at, item }: JointUse): string {
  if (roof.type !== 'bows') return item.title;
  const off = at / lengthOf(roof.line) - 0.5;
  const place = Math.abs(off) < 0.01 ? 'at the crown' : off < 0 ? 'on the left' : 'on the right';
  return `the joint ${place} (${item.title})`;
}
