/** Shelters side by side from above: the length runs to the right, the first of them lies at the bottom. */
import { format } from '@tautline/quantity';
import type { Range, RangePlace } from '@tautline/shelter';
import { boundsOf } from '../scene/bounds.ts';
import type { Measured } from '../scene/dimension.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import { box, type Drawing, line, point, type Shape, text, type ViewOptions } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { surroundDimensions } from '../scene/surround.ts';

/** Part ids of a range: `whole` the range itself, `ties` the members between neighbours; places bring their own. */
export const rangeParts = { whole: 'range', ties: 'tied' } as const;

/** Footprints with their frames, the gaps and the ties between them. */
export const rangePlanView = keptToSheet(drawRange);

function drawRange(range: Range, options: ViewOptions, share: number): Drawing {
  const { system } = options;
  const { places } = range;
  const length = Math.max(...places.map(({ shelter }) => shelter.length));
  const frame = frameFor(length, range.width, roomOf(860, options, 120), 620, share);
  const m = (si: number): string => format(si, 'length', system);
  const shapes: Shape[] = [
    ...places.flatMap((place) => standing(place, frame)),
    ...tiesOf(range, frame),
    ...places.map((place, index) => nameOf(place, index, frame)),
  ];
  // Shelters that are all alike are measured once.
  const alike = places.every(({ shelter }) => shelter === places[0]?.shelter);
  const measured = alike ? places.slice(0, 2) : places;
  const left: Measured[] = measured.flatMap(({ id, shelter, x }, index): Measured[] => {
    const width: Measured = {
      part: id,
      name: 'width',
      value: shelter.width,
      text: `width ${m(shelter.width)}`,
      from: frame.at(0, x),
      to: frame.at(0, x + shelter.width),
    };
    if (index === 0) return [width];
    return [
      ...(alike ? [] : [width]),
      {
        part: rangeParts.whole,
        name: 'gap',
        value: range.gap,
        text: `gap ${m(range.gap)}`,
        from: frame.at(0, x - range.gap),
        to: frame.at(0, x),
      },
    ];
  });
  left.push({
    part: rangeParts.whole,
    name: 'all',
    value: range.width,
    text: `all ${m(range.width)}`,
    from: frame.at(0, 0),
    to: frame.at(0, range.width),
  });
  const below: Measured[] = [
    {
      part: rangeParts.whole,
      name: 'length',
      value: length,
      text: `length ${m(length)}`,
      from: frame.at(0, 0),
      to: frame.at(length, 0),
    },
  ];
  if (range.tie !== undefined)
    below.push({
      part: rangeParts.ties,
      name: 'ties',
      value: range.tie.spacing,
      text: `ties ${m(range.tie.spacing)}`,
      from: frame.at(0, 0),
      to: frame.at(Math.min(range.tie.spacing, length), 0),
    });
  const body = [...shapes, ...surroundDimensions(boundsOf(shapes), { below, left })];
  const words = `${places.length} shelters, ${m(range.gap)} apart${range.tie === undefined ? '' : `, tied by ${range.tie.member.title}`}`;
  return finishSheet(body, {
    view: 'plan',
    title: `${range.name}: plan`,
    subtitle: `Seen from above. ${words}.`,
    description: words,
    labels: [
      { part: rangeParts.whole, label: words },
      ...new Map(places.map(({ id, shelter }) => [id, { part: id, label: shelter.name }])).values(),
    ],
    key: [],
    notes: ['Each shelter has drawings of its own.'],
    scale: frame.scale,
    ...options,
  });
}

function standing({ id, shelter, x }: RangePlace, frame: Frame): readonly Shape[] {
  const { roof, length, width } = shelter;
  const across = roof.line.map((p) => p.x + x);
  const [near, far] = [Math.min(...across), Math.max(...across)];
  const short = (far - near) / 7;
  return [
    box(id, 'footprint', frame.at(0, x), frame.at(length, x + width)),
    // Only the ends of the frames, so that the name can be read.
    ...roof.stations.flatMap((z) => [
      line(id, 'member', frame.at(z, near), frame.at(z, near + short)),
      line(id, 'member', frame.at(z, far - short), frame.at(z, far)),
    ]),
    ...[near, far].map((at) => line(id, 'member', frame.at(0, at), frame.at(length, at))),
  ];
}

function tiesOf({ places, tie, gap }: Range, frame: Frame): readonly Shape[] {
  if (tie === undefined) return [];
  return places.slice(1).flatMap(({ shelter, x }, index) => {
    const shared = Math.min(shelter.length, places[index]!.shelter.length);
    return Array.from({ length: Math.floor(shared / tie.spacing + 1e-9) + 1 }, (_, k) => {
      const z = k * tie.spacing;
      return line(rangeParts.ties, 'member', frame.at(z, x - gap), frame.at(z, x));
    });
  });
}

function nameOf({ id, shelter, x }: RangePlace, index: number, frame: Frame): Shape {
  const at = frame.at(shelter.length / 2, x + shelter.width / 2);
  return text(id, 'note', point(at.x, at.y + 4), `${index + 1}  ${shelter.name}`, {
    size: 12,
    anchor: 'middle',
    bold: true,
  });
}
