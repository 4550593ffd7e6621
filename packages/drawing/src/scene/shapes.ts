/**
 * A drawing as plain data, before any file format. Page units are about 1/96 in with y downward;
 * `scale` and `origin` say how the page relates to the shelter, so that a CAD file can be true to size.
 */
import type { System } from '@tautline/quantity';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a shape means; how it looks is decided by pens and themes. */
export type Style =
  | 'member'
  | 'member-hidden'
  | 'centre-line'
  | 'rail'
  | 'bore'
  | 'post'
  | 'cable'
  | 'film'
  | 'film-hatch'
  | 'strap'
  | 'mesh'
  | 'mesh-hatch'
  | 'sheet'
  | 'ground'
  | 'earth-hatch'
  | 'foot'
  | 'hole'
  | 'concrete'
  | 'joint'
  | 'thing'
  | 'thing-top'
  | 'door'
  | 'thing-hatch'
  | 'clearance'
  | 'crop'
  | 'crop-hatch'
  | 'footprint'
  | 'peg'
  | 'dimension'
  | 'arrow'
  | 'witness'
  | 'note'
  | 'heading'
  | 'balloon'
  | 'leader'
  | 'scale-bar'
  | 'north'
  | 'water'
  | 'water-hatch'
  | 'deflected'
  | 'moment'
  | 'moment-hatch'
  | 'highlight'
  | 'near'
  | 'fails'
  | 'bar'
  | 'bar-hatch'
  | 'offcut'
  | 'offcut-hatch'
  | 'table-rule';

interface ShapeBase {
  /** Part of the model the shape shows, or a word such as 'ground' for what is no part. */
  readonly part: string;
  readonly style: Style;
}

export interface LineShape extends ShapeBase {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}
export interface PolylineShape extends ShapeBase {
  readonly kind: 'polyline';
  readonly points: readonly Point[];
}
export interface PolygonShape extends ShapeBase {
  readonly kind: 'polygon';
  readonly points: readonly Point[];
}
/** Several open strokes in one shape: hatches, crosses, ticks. */
export interface PathShape extends ShapeBase {
  readonly kind: 'path';
  readonly strokes: readonly (readonly Point[])[];
}
export interface CircleShape extends ShapeBase {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}
export interface TextShape extends ShapeBase {
  readonly kind: 'text';
  /** On the base line. */
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees, clockwise on the page. */
  readonly turn: number;
  readonly bold: boolean;
}
/** A measured length: dimension line with arrows and text, and two witness lines from what is measured. */
export interface DimensionShape extends ShapeBase {
  readonly kind: 'dimension';
  /** Ends of the dimension line. */
  readonly from: Point;
  readonly to: Point;
  /** The two points measured. */
  readonly witness: readonly [Point, Point];
  readonly name: string;
  /** SI, m. */
  readonly value: number;
  readonly text: string;
  /** Where the text stands: before or after the line when it is wider. */
  readonly textAt: 'middle' | 'before' | 'after';
  /** Whether the text stands on the far side of the line: below a level one, to the right of an upright one. */
  readonly textBeyond?: boolean;
  /** Room between the line and a text beside it, page units; none when absent. */
  readonly textGap?: number;
  /** Place of a text on the line, from its start to its end as 0 to 1; half way when absent. */
  readonly textShare?: number;
}

export type Shape =
  | LineShape
  | PolylineShape
  | PolygonShape
  | PathShape
  | CircleShape
  | TextShape
  | DimensionShape;

export interface PartLabel {
  readonly part: string;
  /** Spoken and shown as a tool tip. */
  readonly label: string;
}

export interface Drawing {
  /** 'section', 'plan', ... */
  readonly view: string;
  readonly title: string;
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** Page units per metre; absent for tables and charts, which have no scale. */
  readonly scale?: number;
  /** Where the model's origin lies on the page. */
  readonly origin?: Point;
  readonly shapes: readonly Shape[];
  readonly labels: readonly PartLabel[];
}

/** What every view is told. */
export interface ViewOptions {
  readonly system: System;
  /**
   * Width of the sheet to aim at, page units, where it will be shown narrower than sheets are wide: the house
   * is drawn smaller and the letters keep their size. Kept above 360; the widest sheet when absent.
   */
  readonly wide?: number;
  /** Height of the sheet to aim at, page units, beside a width: of a printed page. */
  readonly tall?: number;
}

export const point = (x: number, y: number): Point => ({ x, y });

export const line = (part: string, style: Style, from: Point, to: Point): LineShape => ({
  kind: 'line',
  part,
  style,
  from,
  to,
});
export const polyline = (part: string, style: Style, points: readonly Point[]): PolylineShape => ({
  kind: 'polyline',
  part,
  style,
  points,
});
export const polygon = (part: string, style: Style, points: readonly Point[]): PolygonShape => ({
  kind: 'polygon',
  part,
  style,
  points,
});
export const path = (part: string, style: Style, strokes: readonly (readonly Point[])[]): PathShape => ({
  kind: 'path',
  part,
  style,
  strokes,
});
export const circle = (part: string, style: Style, centre: Point, radius: number): CircleShape => ({
  kind: 'circle',
  part,
  style,
  centre,
  radius,
});
export const box = (part: string, style: Style, a: Point, b: Point): PolygonShape =>
  polygon(part, style, [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }]);

export interface Lettering {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly turn?: number;
  readonly bold?: boolean;
}
export const text = (
  part: string,
  style: Style,
  at: Point,
  words: string,
  lettering: Lettering = {},
): TextShape => ({
  kind: 'text',
  part,
  style,
  at,
  text: words,
  size: lettering.size ?? 12,
  anchor: lettering.anchor ?? 'start',
  turn: lettering.turn ?? 0,
  bold: lettering.bold ?? false,
});
