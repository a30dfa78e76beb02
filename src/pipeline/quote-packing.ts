import { inputError } from '../base/issue.ts';
import { toMicrons } from '../base/units.ts';
import type { PackingTerms } from '../estimate/packing.ts';
import { packRectangles } from '../nesting/patterns/rectangles/pack-rectangles.ts';
import type { PackingRecord } from '../press/packing.ts';
import type { Size } from '../press/sheet-areas.ts';

/** What the job knows of the pieces that are packed. */
type Piece = Pick<PackingTerms, 'isGlued' | 'caliperMm' | 'blankM2' | 'grammage'>;

/** The record in the words of the formulas. Cases that are named by their size are laid out on the pallet. Throws an InputError. */
export function packingTerms(record: PackingRecord, piece: Piece, where: string): PackingTerms {
  const { caseSize, palletSize } = record;
  const laidOut = record.casesPerLayer === undefined && caseSize && palletSize ? casesInLayer(caseSize, palletSize, where) : undefined;
  return {
    ...piece,
    thicknessMm: record.thickness,
    seamMm: record.seamThickness,
    perCase: record.perCase,
    caseLengthMm: record.caseLength,
    rows: record.rows,
    casesPerLayer: record.casesPerLayer ?? laidOut,
    layers: record.layers,
    casesPerPallet: record.casesPerPallet,
    caseHeightMm: record.caseHeight,
    palletHeightMm: record.palletHeight,
    deckMm: record.palletDeck,
    caseKg: record.caseKg,
    palletKg: record.palletKg,
    grams: record.cartonGrams,
  };
}

/** As many cases as lie side by side on a pallet, turned or not. */
export function casesInLayer(box: Size, pallet: Size, where: string): number {
  let most = 0;
  for (const { boxes } of packRectangles(toMicrons(pallet.width), toMicrons(pallet.height), toMicrons(box.width), toMicrons(box.height), Infinity)) most = Math.max(most, boxes?.length ?? 0);
  if (most === 0) throw inputError('case-larger-than-pallet', { where: `${where}: caseSize`, facts: { width: box.width, height: box.height, palletWidth: pallet.width, palletHeight: pallet.height } });
  return most;
}
