import type { Scale } from './scale.ts';

/** Sizes of text and lines in files for production, mm: letters that fit a side margin, knives as thick as a 2 pt rule. */
export const PRODUCTION_SCALE: Scale = { unit: 3, fine: 0.1, thin: 0.18, cut: 0.71, heavy: 0.7 };

/** Body text for station numbers, mm: they are read from a step away. */
export const STATION_UNIT_MM = 6;
