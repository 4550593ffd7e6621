/** Lengths of a plan: the house, its bays, its posts, and what stands in it. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { boundsOf } from '../scene/bounds.ts';
import type { Measured } from '../scene/dimension.ts';
import type { Frame } from '../scene/frame.ts';
import { type Point, point, type Shape } from '../scene/shapes.ts';
import { surroundDimensions } from '../scene/surround.ts';
import { bayMeasures, bayNoun, postBays } from './members.ts';

export function planDimensions(
  shelter: Shelter,
  frame: Frame,
  drawn: readonly Shape[],
  system: System,
): readonly Shape[] {
  const bounds = boundsOf(drawn);
  const m = (si: number): string => format(si, 'length', system);
  const measure = (
    part: string,
    name: string,
    value: number,
    from: Point,
    to: Point,
    words?: string,
  ): Measured => ({
    part,
    name,
    value,
    text: words ?? `${name} ${m(value)}`,
    from: frame.at(from.x, from.y),
    to: frame.at(to.x, to.y),
  });
  const below: Measured[] = [
    measure(shelter.id, 'length', shelter.length, point(0, 0), point(shelter.length, 0)),
    ...bayMeasures(shelter.roof.id, bayNoun(shelter.roof), shelter.roof.stations, system).map((bay) =>
      measure(bay.part, bay.name, bay.value, point(bay.from, 0), point(bay.to, 0), bay.text),
    ),
  ];
  const above = postBays(shelter, system).map((bay) =>
    measure(
      bay.part,
      bay.name,
      bay.value,
      point(bay.from, shelter.width),
      point(bay.to, shelter.width),
      bay.text,
    ),
  );
  const side = [measure(shelter.id, 'width', shelter.width, point(0, 0), point(0, shelter.width))];
  for (const crop of shelter.crops)
    if (crop.fromSide > 0)
      side.push(measure(crop.id, 'first row', crop.fromSide, point(0, 0), point(0, crop.fromSide)));
  for (const thing of shelter.things) {
    const across = thing.lefts[0] ?? 0;
    const { name, starts, length } = thing;
    if (starts > 1e-3)
      above.push(
        measure(
          thing.id,
          `${name} from front`,
          starts,
          point(0, shelter.width),
          point(starts, shelter.width),
        ),
      );
    above.push(
      measure(thing.id, name, length, point(starts, shelter.width), point(starts + length, shelter.width)),
    );
    if (across > 1e-3) side.push(measure(thing.id, 'from side', across, point(0, 0), point(0, across)));
    side.push(measure(thing.id, name, thing.width, point(0, across), point(0, across + thing.width)));
  }
  return surroundDimensions(bounds, { below, above, left: side });
}
