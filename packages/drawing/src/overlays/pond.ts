/** Standing water over the section: the pond at rest on the frame bent under it, or the first pocket of one that runs away. */
import { format, type System } from '@tautline/quantity';
import { type BuiltState, type FrameAnalysis, type FramePonding, stateIn } from '@tautline/structure';
import { type Point, point } from '../scene/shapes.ts';
import type { SectionOverlays } from '../views/overlays.ts';
import { chains } from './chains.ts';

export function waterOverlay(
  { film, ponding, noPonding, states }: FrameAnalysis,
  system: System,
): SectionOverlays {
  if (film === undefined) return { captions: ['No film on the roof: no water can stand in it.'] };
  if (ponding === undefined) return { captions: [`Standing water was not followed: ${noPonding}`] };
  const pond = ponding.rest ?? ponding.first;
  if (pond === undefined) return { captions: [dryWords(ponding)] };
  return {
    ponds: [
      {
        part: film.cover.id,
        outline: pond.bottom.map(({ x, y }) => point(x, y)),
        volume: pond.volume,
        depth: pond.depth,
      },
    ],
    ...(ponding.rest === undefined
      ? {}
      : {
          deflected: {
            lines: bentLines(stateIn(states, 'days'), ponding.rest.state.displacements),
            factor: 1,
          },
        }),
    captions: [pondWords(ponding, system)],
  };
}

const dryWords = ({ verdict, reason }: FramePonding): string =>
  verdict === 'no answer'
    ? `The frame found no balance under standing water: ${reason}.`
    : 'Water runs off: no pocket of the film holds any.';

function pondWords({ first, rest, fall, ended, tipping, path }: FramePonding, system: System): string {
  const water = (volume: number): string => format(volume, 'water', system);
  const deep = (depth: number): string => format(depth, 'length', system);
  if (rest !== undefined)
    return `Water half way between two frames: the pocket of the film fills to ${water(rest.volume)} on a frame, ${deep(rest.depth)} deep, and runs over; the roof sinks ${deep(fall)} under it.`;
  const pocket = `First pocket of the film half way between two frames, before the frames give under it: ${water(first?.volume ?? 0)} on a frame, ${deep(first?.depth ?? 0)} deep.`;
  return ended === 'gives way'
    ? `${pocket} The pocket grows as the frame sinks, and at about ${water(path.at(-1)?.volume ?? tipping)} the frame gives way.`
    : `${pocket} From about ${water(tipping)} on the pocket grows faster than it fills.`;
}

/** The lines of the frame moved from where it was drawn, true size. */
function bentLines({ system }: BuiltState, moves: Float64Array): readonly (readonly Point[])[] {
  const at = (node: number): Point => {
    const { x, y } = system.nodes[node]!;
    return point(x + moves[3 * node]!, y + moves[3 * node + 1]!);
  };
  return [system.roof, system.leftWall, system.rightWall]
    .flatMap((run) => chains(run.map((index) => system.model.elements[index]!)))
    .map((nodes) => nodes.map(at));
}
