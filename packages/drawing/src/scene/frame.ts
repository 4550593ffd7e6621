/** From the shelter's metres (y up) to the page (y down). The model's origin lies at page 0,0 until the sheet is finished. */
import { type Point, point } from './shapes.ts';

export interface Frame {
  /** Page units per metre. */
  readonly scale: number;
  readonly at: (x: number, y: number) => Point;
  readonly all: (points: readonly Point[]) => readonly Point[];
}

export function frameOf(scale: number): Frame {
  const at = (x: number, y: number): Point => point(x * scale, -y * scale);
  return { scale, at, all: (points) => points.map(({ x, y }) => at(x, y)) };
}

/** Narrowest sheet, page units: below that no dimension has room beside the drawing. */
export const NARROWEST = 360;

/** What of the usual room (page units) is left for the subject, when `beside` it dimensions and margins stand. */
export const roomOf = (usual: number, { wide }: { readonly wide?: number }, beside = 150): number =>
  wide === undefined ? usual : Math.min(usual, Math.max(NARROWEST, wide) - beside);

/** The largest scale at which a subject of this size (m) fits a share of the room (page units). */
export const frameFor = (
  width: number,
  height: number,
  roomWidth: number,
  roomHeight: number,
  share = 1,
): Frame => frameOf(share * Math.min(roomWidth / Math.max(width, 0.1), roomHeight / Math.max(height, 0.1)));
