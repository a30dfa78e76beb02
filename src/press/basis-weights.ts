import { M2_PER_FT2, MM_PER_INCH } from '../base/units.ts';

/** g in a pound (exact), and sheets in a ream. */
const GRAMS_PER_POUND = 453.59237;
const SHEETS_PER_REAM = 500;
/** Hundredweights of 100 lb in a tonne. */
const CWT_IN_TONNE = 1e6 / (100 * GRAMS_PER_POUND);
const METRES_PER_INCH = MM_PER_INCH / 1000;

/** A basic size of a paper, inches: basis weights are pounds a ream of this size. */
export interface BasicSize {
  readonly width: number;
  readonly height: number;
}

export type BasicName = 'bond' | 'book' | 'cover' | 'tag' | 'index' | 'bristol';

export const BASIC_SIZES: Readonly<Record<BasicName, BasicSize>> = {
  bond: { width: 17, height: 22 },
  book: { width: 25, height: 38 },
  cover: { width: 20, height: 26 },
  tag: { width: 24, height: 36 },
  index: { width: 25.5, height: 30.5 },
  bristol: { width: 22.5, height: 28.5 },
};

/** g/m² of a basis weight, with the exact constant 1406.139 (the trade often writes 1406.5). */
export function grammageOf(basisPounds: number, basic: BasicSize): number {
  return (basisPounds * GRAMS_PER_POUND) / (SHEETS_PER_REAM * METRES_PER_INCH ** 2 * basic.width * basic.height);
}

export function basisWeightOf(grammage: number, basic: BasicSize): number {
  return grammage / grammageOf(1, basic);
}

/** g/m² of pounds per thousand square feet. */
export function grammageOfMsf(poundsPerThousandSquareFeet: number): number {
  return (poundsPerThousandSquareFeet * GRAMS_PER_POUND) / (1000 * M2_PER_FT2);
}

/** What the trade calls papers of the same basic size. */
const OTHER_NAMES: Readonly<Record<string, keyof typeof BASIC_SIZES>> = { text: 'book', offset: 'book', newsprint: 'tag', writing: 'bond' };
const GRAMS = /^\s*(\d+(?:\.\d+)?)\s*(?:g|gsm|g\/m²|g\/m2)?\s*$/i;
const BASIS = /^\s*(\d+(?:\.\d+)?)\s*(?:lb|#)\s*([a-z]+)\s*$/i;
const BY_AREA = /^\s*(\d+(?:\.\d+)?)\s*lb\s*\/\s*1000\s*(?:ft²|ft2|sq\s?ft)\s*$/i;

/** g/m² of `300`, `300 g/m²`, `80lb cover` or `65lb/1000ft2`. Undefined for anything else. */
export function parseGrammage(text: string): number | undefined {
  const grams = GRAMS.exec(text);
  if (grams) return Number(grams[1]);
  const area = BY_AREA.exec(text);
  if (area) return grammageOfMsf(Number(area[1]));
  const [, pounds, name] = BASIS.exec(text) ?? [];
  const basic = name && BASIC_SIZES[(OTHER_NAMES[name.toLowerCase()] ?? name.toLowerCase()) as keyof typeof BASIC_SIZES];
  return basic ? grammageOf(Number(pounds), basic) : undefined;
}

/** Price of a tonne of `900` or, of 100 lb, `45/cwt`. Undefined for anything else. */
export function parseTonnePrice(text: string): number | undefined {
  const [, price, hundredweight] = /^\s*(\d+(?:\.\d+)?)\s*(\/\s*(?:cwt|100\s?lb))?\s*$/i.exec(text) ?? [];
  return price === undefined ? undefined : Number(price) * (hundredweight ? CWT_IN_TONNE : 1);
}

/** lb per 1000 ft² of g/m². */
export function msfOf(grammage: number): number {
  return grammage / grammageOfMsf(1);
}

/** kg in pounds. */
export function poundsOf(kg: number): number {
  return (kg * 1000) / GRAMS_PER_POUND;
}

/** Pounds a thousand sheets of a size in inches, not rounded. */
export function mWeight(basisPounds: number, basic: BasicSize, width: number, height: number): number {
  return (width * height * basisPounds * 2) / (basic.width * basic.height);
}

/** Pounds a thousand sheets of board sold by the thousand square feet. */
export function mWeightOfMsf(poundsPerThousandSquareFeet: number, width: number, height: number): number {
  return (width * height * poundsPerThousandSquareFeet) / 144;
}

/** Sheets above this are rounded to a pound, those from the next on to half a pound, smaller ones to 0.01; in². */
const LARGE_SHEET = 864;
const MIDDLE_SHEET = 336;

/** A ream's weight as the trade lists it; an estimate, mills differ. Halves go up. */
export function roundReamWeight(pounds: number, width: number, height: number): number {
  const area = width * height;
  const perPound = area > LARGE_SHEET ? 1 : area >= MIDDLE_SHEET ? 2 : 100;
  return Math.round(pounds * perPound) / perPound;
}

/** The same paper in another size weighs in proportion to the area. */
export function equivalentWeight(pounds: number, fromArea: number, toArea: number): number {
  return (pounds * toArea) / fromArea;
}

/** mm of thickness from grammage and bulk (cm³/g). */
export function caliperOf(grammage: number, bulk: number): number {
  return (grammage * bulk) / 1000;
}

/** Thousandths of an inch ("points" of caliper) to mm. */
export function caliperOfPoints(points: number): number {
  return (points * MM_PER_INCH) / 1000;
}

/** Pounds a thousand sheets as the trade lists them: twice the rounded ream. Inches. */
export function listedMWeight(grammage: number, width: number, height: number): number {
  return 2 * roundReamWeight(mWeight(grammage / grammageOf(1, BASIC_SIZES.book), BASIC_SIZES.book, width, height) / 2, width, height);
}

/** Points of caliper of mm. */
export function pointsOf(mm: number): number {
  return (mm / MM_PER_INCH) * 1000;
}

/** Price of a thousand sheets from the price of a hundredweight (100 lb). */
export function pricePerMOf(mWeightPounds: number, pricePerHundredweight: number): number {
  return (mWeightPounds * pricePerHundredweight) / 100;
}
