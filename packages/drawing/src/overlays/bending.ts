/** Bending of everything that bends: bows, rafters, posts and ties in the section; rails along the house in numbers. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, stateIn } from '@tautline/structure';
import { type Point, point } from '../scene/shapes.ts';
import type { MomentLine, SectionOverlays } from '../views/overlays.ts';
import { loadCaption } from './load-words.ts';
import { loadedRails } from './rails.ts';

/** Share of the largest moment below which a member is left plain. */
const SMALL = 0.005;

/** Moments on the side that is stretched; every member to the same measure. */
export function bendingOverlay(
  shelter: Shelter,
  analysis: FrameAnalysis,
  response: Response,
  system: System,
): SectionOverlays {
  const all = runsOf(shelter, analysis, response);
  const sizes = all.map(({ points }) => Math.max(...points.map(({ moment }) => Math.abs(moment)), 0));
  const largest = Math.max(...sizes, 0);
  const moments = all.filter((_, index) => largest > 0 && (sizes[index] ?? 0) > SMALL * largest);
  const rails = railsOf(shelter, analysis, response, system);
  const along = rails.map(({ words }) => words);
  return {
    ...(moments.length > 0 ? { moments } : {}),
    ...(rails.length > 0 ? { along: rails.map(({ part, at, text }) => ({ part, at, text })) } : {}),
    captions: [
      `${loadCaption(response)} Bending of one member of each part, on the side that is stretched.`,
      ...(moments.length === 0 ? ['There is no bending to draw in the section.'] : []),
      ...(along.length === 0 ? [] : [`Along the house, between posts: ${along.join('; ')}.`]),
    ],
  };
}

/** The roof line, both walls and the ties as lines with moments. */
function runsOf(shelter: Shelter, analysis: FrameAnalysis, response: Response): readonly MomentLine[] {
  const { system, result } = stateIn(analysis.states, response.condition);
  const { roof, leftWall, rightWall, elements, model, nodes } = system;
  const built = (node: number | undefined): Point => {
    const place = node === undefined ? undefined : nodes[node];
    const moved = node === undefined ? undefined : result.displacements[node];
    if (!place || !moved) throw new RangeError(`the analysis has no node ${node}`);
    return point(place.x + moved.dx, place.y + moved.dy);
  };
  const byElement = new Map<number, { readonly at: number; readonly moment: number }[]>();
  for (const { element, at, moment } of response.forces)
    byElement.set(element, [...(byElement.get(element) ?? []), { at, moment }]);
  const ties = elements.flatMap(({ role }, index) => (role === 'tie' ? [[index]] : []));
  return [roof, leftWall, rightWall, ...ties].flatMap((run): MomentLine[] => {
    const part = run[0] === undefined ? undefined : elements[run[0]]?.part;
    if (part === undefined) return [];
    const points = run.flatMap((index) => {
      const [i, j] = byElement.get(index) ?? [];
      const element = model.elements[index];
      if (!i || !j || !element) return [];
      // A sprung bow stands on the line of the section; what is straight stands between its own nodes.
      const [a, b] =
        part === shelter.roof.id && elements[index]?.role === 'roof'
          ? [placeAt(shelter, i.at), placeAt(shelter, j.at)]
          : [built(element.i), built(element.j)];
      // The analysis counts a moment positive that bends to the left of travel, which stretches the right side.
      return [
        { ...a, moment: -i.moment },
        { ...b, moment: -j.moment },
      ];
    });
    return points.length < 2 ? [] : [{ part, points }];
  });
}

/** Place on the roof line at an arc length, m. */
function placeAt({ roof }: Shelter, s: number): Point {
  const { line } = roof;
  const next = line.findIndex((one) => one.s >= s);
  const b = line[next < 0 ? line.length - 1 : next];
  const a = line[next <= 0 ? 0 : next - 1];
  if (!a || !b) throw new RangeError('the roof has no line');
  const share = b.s > a.s ? Math.min(1, (s - a.s) / (b.s - a.s)) : 0;
  return point(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
}

interface RailWords {
  readonly part: string;
  readonly at: Point;
  /** Beside the rail, which the section shows end on. */
  readonly text: string;
  readonly words: string;
}

/** Ridge and eave rail in numbers: the side shows how they bend. */
const railsOf = (
  shelter: Shelter,
  analysis: FrameAnalysis,
  response: Response,
  system: System,
): readonly RailWords[] =>
  loadedRails(shelter, analysis, response).flatMap(({ noun, demand }) => {
    const { moment, pull, rail } = demand;
    const at = rail.lines[0];
    if (at === undefined) return [];
    const number = pull === undefined ? format(moment ?? 0, 'moment', system) : format(pull, 'force', system);
    const over = `over ${format(rail.span, 'length', system)}`;
    return [
      {
        part: rail.id,
        at: point(at.x, at.y),
        text: pull === undefined ? `${noun} ${number} along` : `${noun} cable pulls ${number}`,
        words:
          pull === undefined
            ? `the ${noun} bends by ${number} ${over}`
            : `the ${noun} cable pulls ${number} ${over}`,
      },
    ];
  });
