/** Heights and spacings of a side. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { boundsOf } from '../scene/bounds.ts';
import type { Measured } from '../scene/dimension.ts';
import type { Frame } from '../scene/frame.ts';
import type { Shape } from '../scene/shapes.ts';
import { surroundDimensions } from '../scene/surround.ts';
import { allPosts, type Bay, bayMeasures, bayNoun, postBays, postNoun } from './members.ts';

export function sideDimensions(
  shelter: Shelter,
  frame: Frame,
  drawn: readonly Shape[],
  system: System,
): readonly Shape[] {
  const bounds = boundsOf(drawn);
  const { roof, length } = shelter;
  const m = (si: number): string => format(si, 'length', system);
  const up = (part: string, name: string, value: number, z: number, from: number): Measured => ({
    part,
    name,
    value,
    text: `${name} ${m(value)}`,
    from: frame.at(z, from),
    to: frame.at(z, from + value),
  });
  const crown = Math.max(...roof.line.map((p) => p.y));
  const left: Measured[] = [up(roof.id, 'height', crown, 0, 0)];
  if (shelter.sidePosts) left.push(up(shelter.sidePosts.id, 'post', shelter.sidePosts.height, 0, 0));
  const foot = (roof.type === 'bows' ? roof.foot : undefined) ?? shelter.sidePosts?.foot;
  if (foot && foot.driven > 0) left.push({ ...up(foot.id, 'deep', foot.driven, 0, -foot.driven) });
  const right: Measured[] = allPosts(shelter)
    .filter((row) => row !== shelter.sidePosts)
    .flatMap((row) => [
      up(row.id, postNoun(row), row.height, length, 0),
      ...(row.foot.driven > 0 ? [up(row.foot.id, 'deep', row.foot.driven, length, -row.foot.driven)] : []),
    ]);
  const guys: Bay[] = [];
  for (const { id, role, plane, from, to } of shelter.braces)
    if (role === 'guy' && plane === 'along') {
      const [a, b] = [Math.min(from.z, to.z), Math.max(from.z, to.z)];
      guys.push({ part: id, name: 'guy out', value: b - a, from: a, to: b, text: `guy out ${m(b - a)}` });
    }
  const spans: readonly Bay[] = [
    ...guys,
    ...bayMeasures(roof.id, bayNoun(roof), roof.stations, system),
    ...postBays(shelter, system),
    { part: shelter.id, name: 'length', value: length, from: 0, to: length, text: `length ${m(length)}` },
  ];
  const below = spans.map(
    (bay): Measured => ({ ...bay, from: frame.at(bay.from, 0), to: frame.at(bay.to, 0) }),
  );
  return surroundDimensions(bounds, { below, left, right });
}
