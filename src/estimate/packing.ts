import { figure, given, type Figure, type Input } from './figure.ts';

/** How finished work is packed, as far as it was said. Lengths in mm, weights in kg. */
export interface PackingTerms {
  /** Glued flat, board lies on board; labels and flat blanks lie single. */
  readonly isGlued: boolean;
  readonly caliperMm?: number | undefined;
  /** Measured, of one piece as it lies in the case; worked out from the caliper where it is open. */
  readonly thicknessMm?: number | undefined;
  readonly seamMm?: number | undefined;
  readonly perCase?: number | undefined;
  /** Inside, along the row in which the pieces stand. */
  readonly caseLengthMm?: number | undefined;
  readonly rows: number;
  readonly casesPerLayer?: number | undefined;
  readonly layers?: number | undefined;
  readonly casesPerPallet?: number | undefined;
  /** Outside. */
  readonly caseHeightMm?: number | undefined;
  /** Greatest height of a loaded pallet, and of the bare one. */
  readonly palletHeightMm?: number | undefined;
  readonly deckMm: number;
  readonly caseKg?: number | undefined;
  readonly palletKg?: number | undefined;
  readonly blankM2?: number | undefined;
  readonly grammage: number;
  /** Weighed, of one piece; worked out from the blank where it is open. */
  readonly grams?: number | undefined;
}

export interface Packed {
  readonly perCase: Figure;
  readonly cases: Figure;
  readonly pallets: Figure;
  readonly netWeight: Figure;
  readonly grossWeight: Figure;
  /** All of them in the order in which they are worked out. */
  readonly figures: readonly Figure[];
}

/** Layers of board in a carton that is glued flat, and at its seam, where the flap lies between two panels. */
const LAYERS = { flat: 2, seam: 3 } as const;

/**
 * Cases, pallets and weight of so many finished pieces. Where only the case is known, its length is filled at the seam's
 * thickness: the most that a row can need, so what is packed always fits.
 */
export function packed(quantity: number, terms: PackingTerms): Packed {
  const { rows } = terms;
  const thickness = thicknesses(terms);
  const perCase = terms.perCase === undefined
    ? fillingCase(terms, thickness.at(-1)!)
    : figure('cartons per case', 'cartons', 'count given', { 'count given': terms.perCase });
  const rowLengths = thickness.map((one) => figure(`row of a case, by ${one.name}`, 'mm', `cartons per case ÷ rows × ${one.name}`, { 'cartons per case': perCase, rows, [one.name]: one }));
  const cases = figure('cases', 'cases', '⌈quantity ÷ cartons per case⌉', { quantity, 'cartons per case': perCase });
  const perPallet = casesPerPallet(terms);
  const pallets = figure('pallets', 'pallets', '⌈cases ÷ cases per pallet⌉', { cases, 'cases per pallet': perPallet.at(-1)! });
  const each = terms.grams === undefined
    ? figure('weight of one', 'g', 'blank area × grammage', { 'blank area': given(terms.blankM2, 'blank area'), grammage: terms.grammage })
    : figure('weight of one', 'g', 'weight given', { 'weight given': terms.grams });
  const netWeight = figure('net weight', 'kg', 'quantity × weight of one ÷ 1000', { quantity, 'weight of one': each });
  const grossWeight = figure('gross weight', 'kg', 'net weight + cases × case weight + pallets × pallet weight', {
    'net weight': netWeight,
    cases,
    'case weight': given(terms.caseKg, 'case weight'),
    pallets,
    'pallet weight': given(terms.palletKg, 'pallet weight'),
  });
  return { perCase, cases, pallets, netWeight, grossWeight, figures: [...thickness, perCase, ...rowLengths, cases, ...perPallet, pallets, each, netWeight, grossWeight] };
}

function fillingCase({ caseLengthMm, rows }: PackingTerms, thickest: Figure): Figure {
  return figure('cartons per case', 'cartons', `⌊case length ÷ ${thickest.name}⌋ × rows`, { 'case length': given(caseLengthMm, 'case length or cartons per case'), [thickest.name]: thickest, rows });
}

/** Of one piece: flat, and last where it is thickest. */
function thicknesses({ isGlued, caliperMm, thicknessMm, seamMm, perCase }: PackingTerms): Figure[] {
  // How thick the pieces are matters only where nobody said how many go into a case, or for the length of the row.
  if (perCase !== undefined && caliperMm === undefined && thicknessMm === undefined) return [];
  const of = (name: string, measured: number | undefined, layers: number): Figure =>
    measured === undefined ? figure(name, 'mm', 'layers of board × caliper', { 'layers of board': layers, caliper: given(caliperMm, 'caliper') }) : figure(name, 'mm', 'thickness measured', { 'thickness measured': measured });
  if (!isGlued) return [of('thickness', thicknessMm, 1)];
  // A piece that was measured is as thick as it was measured, seam and all.
  const flat = of('thickness glued flat', thicknessMm, LAYERS.flat);
  return thicknessMm !== undefined && seamMm === undefined ? [flat] : [flat, of('thickness at the seam', seamMm, LAYERS.seam)];
}

/** What is known of a pallet, the cases on it last. */
function casesPerPallet(terms: PackingTerms): Figure[] {
  const { casesPerLayer, layers, caseHeightMm, palletHeightMm, deckMm } = terms;
  if (terms.casesPerPallet !== undefined) return [figure('cases per pallet', 'cases', 'count given', { 'count given': terms.casesPerPallet })];
  const stacked: Figure | undefined = layers !== undefined || palletHeightMm === undefined || caseHeightMm === undefined
    ? undefined
    : figure('layers on a pallet', 'layers', '⌊(pallet height − deck) ÷ case height⌋', { 'pallet height': palletHeightMm, deck: deckMm, 'case height': caseHeightMm });
  const inLayers: Input = stacked ?? given(layers, 'cases per pallet');
  return [...(stacked ? [stacked] : []), figure('cases per pallet', 'cases', 'cases per layer × layers', { 'cases per layer': given(casesPerLayer, 'cases per pallet'), layers: inLayers })];
}
