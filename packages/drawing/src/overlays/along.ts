/** Bending of what runs along the house, to be drawn over its side: x is the length along the house. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import type { FrameAnalysis, Response } from '@tautline/structure';
import { type Point, point } from '../scene/shapes.ts';
import type { MomentLine, SectionOverlays } from '../views/overlays.ts';
import { loadCaption } from './load-words.ts';
import { type LoadedRail, loadedRails } from './rails.ts';

/** Points drawn in each bay. */
const POINTS = 12;
/** Share of a bay that the sag of a cable should be drawn as, and the factors to choose from. */
const VISIBLE = 0.05;
const factors = [1, 2, 5, 10, 20, 50];

/**
 * Ridge and eave rail bay by bay: the parabola of an even load w on a bay L held at its two ends, M = w L²/8 in
 * the middle (handbook beam table), on the side that is stretched; of a cable its sag and its pull.
 */
export function alongOverlay(
  shelter: Shelter,
  analysis: FrameAnalysis,
  response: Response,
  system: System,
): SectionOverlays {
  const rails = loadedRails(shelter, analysis, response);
  const bent = rails.filter(({ demand }) => demand.moment !== undefined);
  const cables = rails.filter(({ demand }) => demand.pull !== undefined);
  const factor = sagFactor(cables);
  const along = cables.map(({ noun, demand, carried }) => ({
    part: demand.rail.id,
    at: point(middleOf(carried), demand.rail.lines[0]?.y ?? 0),
    text: `${noun} cable pulls ${format(demand.pull ?? 0, 'force', system)}`,
  }));
  return {
    ...(bent.length > 0 ? { moments: bent.map(momentsOf) } : {}),
    ...(along.length > 0 ? { along } : {}),
    ...(cables.length > 0
      ? { deflected: { lines: cables.map((rail) => sagging(rail, factor)), factor } }
      : {}),
    captions: [
      ...(rails.length === 0
        ? [
            `${loadCaption(response)} No ridge and no eave rail carries the frames: nothing along the house bends under them.`,
          ]
        : [
            `${loadCaption(response)} ${rails.map((rail) => inWords(rail, factor, system)).join(' ')}`,
            'The frames are taken as an even load on the rail, and each bay as held at its two ends.',
          ]),
      ...(shelter.purlins.length > 0
        ? [
            'Purlins are left plain: under film it is the frames that are loaded; what sheets do to purlins is in the check purlin-span.',
          ]
        : []),
    ],
  };
}

const middleOf = (carried: readonly number[]): number => ((carried[0] ?? 0) + (carried.at(-1) ?? 0)) / 2;

interface Bay {
  readonly from: number;
  readonly length: number;
}

const baysOf = (carried: readonly number[]): readonly Bay[] =>
  carried.slice(1).map((to, i) => ({ from: carried[i] ?? 0, length: to - (carried[i] ?? 0) }));

/** Values of a parabola over every bay, 0 at what carries the rail; `middle` is that of a bay of the rail's own span. */
function parabolas(rail: LoadedRail, middle: number, power: number): readonly (Point & { value: number })[] {
  const { demand, carried } = rail;
  const y = demand.rail.lines[0]?.y ?? 0;
  return baysOf(carried).flatMap(({ from, length }) =>
    Array.from({ length: POINTS + 1 }, (_, n) => {
      const share = n / POINTS;
      const value = middle * (length / demand.rail.span) ** power * 4 * share * (1 - share);
      return { x: from + share * length, y, value };
    }),
  );
}

/** A load downward stretches the underside, which lies to the right of travel. */
function momentsOf(rail: LoadedRail): MomentLine {
  const { demand } = rail;
  const sign = demand.load >= 0 ? -1 : 1;
  const points = parabolas(rail, sign * (demand.moment ?? 0), 2);
  return { part: demand.rail.id, points: points.map(({ x, y, value }) => ({ x, y, moment: value })) };
}

function sagging(rail: LoadedRail, factor: number): readonly Point[] {
  const { demand } = rail;
  const down = demand.load >= 0 ? factor : -factor;
  return parabolas(rail, demand.sag, 2).map(({ x, y, value }) => point(x, y - down * value));
}

function sagFactor(cables: readonly LoadedRail[]): number {
  const largest = Math.max(...cables.map(({ demand }) => demand.sag / demand.rail.span), 0);
  return factors.findLast((factor) => factor * largest <= VISIBLE) ?? 1;
}

function inWords({ noun, demand }: LoadedRail, factor: number, system: System): string {
  const { rail, moment, pull, sag, load } = demand;
  const bay = format(rail.span, 'length', system);
  const way = load >= 0 ? 'down' : 'up';
  const moves = `${load >= 0 ? 'sags' : 'rises'} ${format(sag, 'thickness', system)}`;
  const even = `${format(Math.abs(load), 'line-load', system)} ${way}`;
  const name = `${noun.charAt(0).toUpperCase()}${noun.slice(1)}`;
  return pull === undefined
    ? `${name}: ${even} bends it by ${format(moment ?? 0, 'moment', system)} over ${bay}; it ${moves}.`
    : `${name} cable: ${even} pulls it to ${format(pull, 'force', system)} over ${bay}; it ${moves}${factor === 1 ? '' : `, drawn ${factor} times as large`}.`;
}
