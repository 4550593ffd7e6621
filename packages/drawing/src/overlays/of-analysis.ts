/**
 * From an analysis of the typical frame and the findings on it to what is drawn over the section: pure, and
 * only what the analysis holds. Where it holds nothing (no film, a frame that gives way) a caption says so.
 */
import { format, type System, usedText } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, stateIn } from '@tautline/structure';
import { describeParts } from '../describe.ts';
import { type Point, point } from '../scene/shapes.ts';
import type { SectionOverlays } from '../views/overlays.ts';
import { alongOverlay } from './along.ts';
import { bendingOverlay } from './bending.ts';
import { chains } from './chains.ts';
import { loadCaption, responseId } from './load-words.ts';
import { waterOverlay } from './pond.ts';

export type OverlayName = 'use' | 'deflected' | 'bending' | 'along' | 'water';

/** The view an overlay belongs over: what bends along the house is seen from its side. */
export const viewOfOverlay = (overlay: OverlayName): 'section' | 'side' =>
  overlay === 'along' ? 'side' : 'section';

/** What of a finding is drawn. */
export interface PartUse {
  /** Check id, e.g. 'over-span'. */
  readonly id: string;
  readonly part: string;
  /** Demand over capacity. */
  readonly utilisation?: number;
}

/** The greatest share of a limit of each part, hardest first. */
export function useByPart(findings: readonly PartUse[]): readonly (PartUse & { readonly value: number })[] {
  const worst = new Map<string, PartUse & { readonly value: number }>();
  for (const finding of findings) {
    const value = finding.utilisation;
    if (value === undefined || !Number.isFinite(value)) continue;
    if (value > (worst.get(finding.part)?.value ?? -1)) worst.set(finding.part, { ...finding, value });
  }
  return [...worst.values()].sort((a, b) => b.value - a.value || (a.part < b.part ? -1 : 1));
}

/** What a part is, without its sizes: descriptions begin with that. */
const shortly = (words: string): string => {
  const [name = words] = words.split(':');
  return name.charAt(0).toLowerCase() + name.slice(1);
};

/** How many parts the captions name. */
const NAMED = 6;

export function useOverlay(shelter: Shelter, findings: readonly PartUse[], system: System): SectionOverlays {
  const parts = useByPart(findings);
  if (parts.length === 0) return { captions: ['No check gives a share of a limit here.'] };
  const words = new Map(describeParts(shelter, system).map((one) => [one.part, shortly(one.words)]));
  const named = parts
    .filter(({ part }) => words.has(part))
    .slice(0, NAMED)
    .map(({ part, id, value }) => `${words.get(part)} ${usedText(value)} (${id})`);
  return {
    utilisation: parts.map(({ part, value }) => ({ part, value })),
    captions: [`Greatest share of a limit by part: ${named.join('; ')}.`],
  };
}

/** The response asked for, or of the greatest movement when none is named. Undefined: no such load. */
export function responseOf(analysis: FrameAnalysis, load: string | undefined): Response | undefined {
  if (load !== undefined) return analysis.responses.find((response) => responseId(response) === load);
  return [...analysis.responses].sort((a, b) => largest(b) - largest(a))[0];
}

const largest = ({ displacements }: Response): number =>
  displacements.reduce((most, { dx, dy }) => Math.max(most, Math.hypot(dx, dy)), 0);

/** Share of the width that the greatest movement should be drawn as, and the factors to choose from. */
const VISIBLE = 0.09;
/** How many times as far as that a movement may be drawn beside one that it is compared with. */
const FURTHEST = 3;
const factors = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** Whole factor by which a movement (m) is drawn in a section of this width (m). */
export function magnification(movement: number, width: number): number {
  const wanted = (VISIBLE * width) / Math.max(movement, 1e-9);
  return factors.reduce((best, factor) => (factor <= wanted ? factor : best), 1);
}

/**
 * The bent frame: node + way into the built shape + `factor` times the movement under load. A sprung bow is
 * modelled as the straight pipe it was, so the way into the built shape matters. Where the movement is one of
 * several to be compared, `compared` is the one that sets the factor.
 */
export function deflectedOverlay(
  shelter: Shelter,
  analysis: FrameAnalysis,
  response: Response,
  system: System,
  compared: Response = response,
): SectionOverlays {
  const state = stateIn(analysis.states, response.condition);
  const move = largest(response);
  const factor = Math.min(
    magnification(largest(compared), shelter.width),
    magnification(move / FURTHEST, shelter.width),
  );
  const at = (node: number): Point => {
    const place = state.system.nodes[node];
    const built = state.result.displacements[node];
    const moved = response.displacements[node];
    if (!place || !built || !moved) throw new RangeError(`the analysis has no node ${node}`);
    return point(place.x + built.dx + factor * moved.dx, place.y + built.dy + factor * moved.dy);
  };
  const { roof, leftWall, rightWall, elements, model } = state.system;
  const ties = elements.flatMap(({ role }, index) => (role === 'tie' ? [[index]] : []));
  const lines = [roof, leftWall, rightWall, ...ties]
    .filter((run) => run.length > 0)
    .flatMap((run) => chains(run.map((index) => model.elements[index] as { i: number; j: number })))
    .map((nodes) => nodes.map(at));
  return {
    deflected: { lines, factor },
    captions: [
      `${loadCaption(response)} Greatest movement ${format(move, 'thickness', system)}${factor === 1 ? ', drawn true size' : `, drawn ${factor} times as large`}.`,
    ],
  };
}

export interface OverlayChoice {
  readonly overlay: OverlayName;
  /** An id of `loadChoices`; without it the load that moves the frame most. */
  readonly load?: string;
  /** The frame at the site's gust where `analysis` is that of another gust: keeps the factor of movements. */
  readonly compared?: FrameAnalysis;
}

/** One overlay by name. */
export function overlaysOf(
  shelter: Shelter,
  analysis: FrameAnalysis | undefined,
  findings: readonly PartUse[],
  { overlay, load, compared }: OverlayChoice,
  system: System,
): SectionOverlays {
  if (overlay === 'use') return useOverlay(shelter, findings, system);
  if (analysis === undefined) return { captions: ['This kind of frame is not calculated: nothing to show.'] };
  if (overlay === 'water') return waterOverlay(analysis, system);
  const response = responseOf(analysis, load);
  if (response === undefined) return { captions: ['This load is not among those of the shelter any more.'] };
  if (overlay === 'bending') return bendingOverlay(shelter, analysis, response, system);
  if (overlay === 'along') return alongOverlay(shelter, analysis, response, system);
  const other = compared && responseOf(compared, responseId(response));
  return deflectedOverlay(shelter, analysis, response, system, other);
}
