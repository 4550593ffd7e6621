/**
 * How each style is drawn: weights, dashes and which tones of a theme it uses. Weights and dashes tell
 * things apart by themselves, so that a black-and-white print or a colour-blind reader loses nothing.
 */
import type { Style } from '../scene/shapes.ts';

export type Tone =
  | 'ink'
  | 'paper'
  | 'soft'
  | 'member'
  | 'member-fill'
  | 'film'
  | 'mesh'
  | 'earth'
  | 'foot'
  | 'crop'
  | 'dimension'
  | 'joint'
  | 'water'
  | 'water-fill'
  | 'deflected'
  | 'moment'
  | 'highlight'
  | 'near'
  | 'fails'
  | 'bar-fill'
  | 'offcut-fill';

export interface Pen {
  readonly stroke?: Tone;
  readonly fill?: Tone;
  /** Page units. */
  readonly width: number;
  readonly dash?: readonly number[];
}

export const pens: Readonly<Record<Style, Pen>> = {
  member: { stroke: 'member', fill: 'member-fill', width: 1.2 },
  'member-hidden': { stroke: 'member', width: 0.9, dash: [6, 3] },
  'centre-line': { stroke: 'member', width: 0.5, dash: [12, 3, 2, 3] },
  rail: { stroke: 'member', fill: 'member-fill', width: 1.4 },
  bore: { stroke: 'member', fill: 'paper', width: 0.8 },
  post: { stroke: 'member', fill: 'member-fill', width: 1.1 },
  cable: { stroke: 'ink', fill: 'ink', width: 1.4 },
  film: { stroke: 'film', width: 1.8 },
  'film-hatch': { stroke: 'film', width: 0.5 },
  strap: { stroke: 'film', width: 1, dash: [7, 2] },
  mesh: { stroke: 'mesh', width: 1.2, dash: [2, 2.5] },
  'mesh-hatch': { stroke: 'mesh', width: 0.4 },
  sheet: { stroke: 'film', width: 2.6, dash: [9, 2] },
  ground: { stroke: 'earth', width: 1.8 },
  'earth-hatch': { stroke: 'earth', width: 0.6 },
  foot: { stroke: 'foot', fill: 'paper', width: 1.3 },
  hole: { stroke: 'foot', width: 0.9, dash: [4, 3] },
  concrete: { stroke: 'foot', fill: 'bar-fill', width: 1 },
  joint: { stroke: 'joint', fill: 'paper', width: 1.4 },
  thing: { stroke: 'soft', fill: 'paper', width: 1.1 },
  'thing-top': { stroke: 'soft', fill: 'bar-fill', width: 1.1 },
  door: { stroke: 'joint', fill: 'paper', width: 1.8 },
  'thing-hatch': { stroke: 'soft', width: 0.5 },
  clearance: { stroke: 'soft', width: 0.8, dash: [3, 3] },
  crop: { stroke: 'crop', width: 0.9, dash: [7, 3, 2, 3] },
  'crop-hatch': { stroke: 'crop', width: 0.45 },
  footprint: { stroke: 'soft', width: 0.9, dash: [10, 4] },
  peg: { stroke: 'ink', fill: 'paper', width: 1.4 },
  dimension: { stroke: 'dimension', width: 0.7 },
  arrow: { fill: 'dimension', width: 0 },
  witness: { stroke: 'dimension', width: 0.4 },
  note: { fill: 'ink', width: 0 },
  heading: { fill: 'ink', width: 0 },
  balloon: { stroke: 'ink', fill: 'paper', width: 1 },
  leader: { stroke: 'ink', fill: 'ink', width: 0.6 },
  'scale-bar': { stroke: 'ink', fill: 'ink', width: 0.8 },
  north: { stroke: 'ink', fill: 'ink', width: 1.2 },
  water: { stroke: 'water', fill: 'water-fill', width: 1 },
  'water-hatch': { stroke: 'water', width: 0.7, dash: [5, 3] },
  deflected: { stroke: 'deflected', width: 1.8, dash: [7, 4] },
  moment: { stroke: 'moment', width: 1.1 },
  'moment-hatch': { stroke: 'moment', width: 0.5 },
  highlight: { stroke: 'highlight', width: 3, dash: [1, 3] },
  near: { stroke: 'near', width: 2.6, dash: [6, 4] },
  fails: { stroke: 'fails', width: 3.6 },
  bar: { stroke: 'ink', fill: 'bar-fill', width: 1 },
  'bar-hatch': { stroke: 'ink', width: 0.4 },
  offcut: { stroke: 'soft', fill: 'paper', width: 0.9, dash: [4, 3] },
  'offcut-hatch': { stroke: 'soft', width: 0.5 },
  'table-rule': { stroke: 'soft', width: 0.6 },
};
