import type { CurvePath } from '../geometry/curve.ts';
import type { Box, Point } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';

/**
 * A picture as one flat display list: millimetres, sheet coordinates (lower left corner of the sheet at the origin, y
 * up, gripper edge at y = 0). Writers (SVG, PDF) only translate it; what is drawn, where and how thick is decided here.
 */
export interface Scene {
  /** For the title of a document and for people who do not see the picture. */
  readonly title: string;
  readonly description: string;
  /** Everything that is drawn, surround included. */
  readonly box: Box;
  readonly sheet: { readonly width: number; readonly height: number };
  /** Drawings that are used many times, each in its own axes. */
  readonly symbols: readonly SceneSymbol[];
  /** In painting order. Names are unique; rules carry the names of ISO 19593-1 processing steps, nothing else does. */
  readonly layers: readonly SceneLayer[];
}

export interface SceneSymbol {
  readonly id: string;
  readonly items: readonly PathItem[];
}

export interface SceneLayer {
  readonly name: string;
  readonly items: readonly SceneItem[];
}

export type SceneItem = PathItem | TextItem | UseItem;

export interface PathItem {
  readonly kind: 'path';
  /** Filled areas are the points that an odd number of closed paths encloses, so that openings stay open. */
  readonly paths: readonly CurvePath[];
  readonly look: Look;
}

export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  /** On the baseline. */
  readonly at: Point;
  /** Height of the letters' square, mm. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turn: Turn;
  readonly bold: boolean;
  readonly paint: Paint;
}

/** A symbol turned about its origin, then moved. */
export interface UseItem {
  readonly kind: 'use';
  readonly symbol: string;
  readonly at: Point;
  readonly turn: Turn;
}

export interface Look {
  readonly fill?: Paint;
  readonly stroke?: Paint;
  /** mm; given with every stroke. */
  readonly width?: number;
  /** Lengths of dash and gap, mm. */
  readonly dash?: readonly number[];
  /** Dots instead of butt-ended dashes. */
  readonly round?: boolean;
}

/** Inks of the picture. One accent; everything else must tell itself apart in black and white. */
export type Paint = 'ink' | 'grey' | 'hatch' | 'paper' | 'blank' | 'light' | 'accent';

export const COLOURS: Readonly<Record<Paint, readonly [red: number, green: number, blue: number]>> = {
  ink: [31, 36, 40],
  grey: [104, 110, 112],
  hatch: [205, 200, 188],
  paper: [255, 255, 255],
  blank: [243, 237, 224],
  light: [226, 221, 209],
  accent: [166, 52, 38],
};
