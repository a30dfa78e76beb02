import type { Issue } from '../base/issue.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Box, Point } from '../geometry/point.ts';
import type { Dieline } from './dieline.ts';

/**
 * A drawing's content before anything is understood of it, whatever file it came from: lines, filled shapes and texts,
 * in millimetres, y up, in drawing order, everything placed and nothing hidden.
 */
export interface Drawing {
  readonly lines: readonly DrawnLine[];
  /** Filled shapes without a stroke: artwork, and the heads of dimension arrows. */
  readonly fills: readonly DrawnLine[];
  readonly texts: readonly DrawnText[];
  /** Texts in fonts whose bytes are no characters: only their places are known. */
  readonly unreadTexts?: readonly DrawnText[];
  /** Size of the page whose upper left corner is the origin, mm, where the drawing has one. */
  readonly page: { readonly width: number; readonly height: number } | undefined;
  readonly scale: Dieline['scale'];
  readonly yAxis: Dieline['yAxis'];
  readonly fingerprint: string;
  readonly issues: readonly Issue[];
}

/** One subpath. */
export interface DrawnLine {
  readonly curves: CurvePath;
  readonly closed: boolean;
  readonly source: LineSource;
}

/** Where a line comes from and how it is drawn; shared by the subpaths of one element. */
export interface LineSource {
  /** Elements count from 0 in drawing order. */
  readonly index: number;
  /** `path#k3 in layer "Stanze"`, `path 3 (line 12)` without an id. */
  readonly described: string;
  /** The element's own names, then its groups', innermost first. */
  readonly levels: readonly NameLevel[];
  /** Colour as `normaliseColour` spells it. */
  readonly stroke: string;
  /** Lengths of dashes and gaps, mm; empty for a solid line. */
  readonly dash: readonly number[];
  readonly widthMm: number;
  readonly filled: boolean;
  /** Colour of the filling, spelled as `stroke` is, where it is known. */
  readonly fill?: string;
  /** Box that the drawing program clips it to, mm, where it does. */
  readonly clip?: Box;
  /** Carries an arrowhead or other marker at an end. */
  readonly marked: boolean;
}

/** What one element is called. */
export interface NameLevel {
  readonly group: boolean;
  readonly id: string | undefined;
  readonly classes: readonly string[];
  /** In the order in which they are asked for a role: data attributes, labels, title, classes, id. */
  readonly names: readonly string[];
  /** Identifies the element; equal for all lines of one group. */
  readonly key: number;
}

export interface DrawnText {
  readonly content: string;
  /** Anchor of its first character's baseline. */
  readonly place: Point;
  readonly heightMm: number;
  /** How far it reaches along its direction, where that is known. */
  readonly widthMm?: number;
  /** Where `place` is in the line of text, in SVG's words: start, middle or end. */
  readonly anchor: string;
  /** Direction of writing, unit length. */
  readonly direction: Point;
  readonly levels: readonly NameLevel[];
}
