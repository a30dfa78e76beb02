import { MM_PER_INCH } from '../base/units.ts';
import { figure, type Figure } from './figure.ts';

/**
 * Figures of a cutting die, as starting values that the die maker confirms. Knife 23.8 mm high and 0.71 mm (2 pt) thick;
 * crease rule = knife height − board; channel = (1.3 … 1.5) × board + crease rule, the low factor where fibres run along
 * the crease, the high one where they run across it (makers of creasing matrix). Force: 300 to 500 lb per inch of knife in
 * the trade; 400 is taken, without the force of the ejection rubber.
 */
export const KNIFE_HEIGHT_MM = 23.8;
export const RULE_THICKNESS_MM = 0.71;
export const CHANNEL_FACTOR = { along: 1.3, across: 1.5 } as const;

const NEWTONS_PER_POUND_FORCE = 4.4482216152605;
const POUNDS_PER_INCH = 400;
/** 70.05 N/mm. */
export const CUTTING_FORCE_N_PER_MM = (POUNDS_PER_INCH * NEWTONS_PER_POUND_FORCE) / MM_PER_INCH;
const NEWTONS_PER_TONNE_FORCE = 9806.65;

export function creaseHeight(caliperMm: number): Figure {
  return figure('crease rule height', 'mm', 'knife height − caliper', { 'knife height': KNIFE_HEIGHT_MM, caliper: caliperMm });
}

/** `grain`: how the fibres run to the crease. */
export function channelWidth(caliperMm: number, grain: keyof typeof CHANNEL_FACTOR): Figure {
  return figure(`channel width, fibres ${grain} the crease`, 'mm', 'factor × caliper + crease rule', { factor: CHANNEL_FACTOR[grain], caliper: caliperMm, 'crease rule': RULE_THICKNESS_MM });
}

/** Of all rules that cut, in tonnes-force. */
export function cuttingForce(cuttingMm: number): Figure {
  return figure('cutting force', 'tonnes-force', 'cutting rule × force ÷ newtons', { 'cutting rule': cuttingMm, force: CUTTING_FORCE_N_PER_MM, newtons: NEWTONS_PER_TONNE_FORCE });
}
