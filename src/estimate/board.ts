import { figure, type Figure, type Input } from './figure.ts';

export interface Board {
  readonly widthMm: number;
  readonly heightMm: number;
  /** g/m² */
  readonly grammage: number;
}

const MM2_PER_M2 = 1_000_000;

export function sheetArea({ widthMm, heightMm }: Pick<Board, 'widthMm' | 'heightMm'>): Figure {
  return figure('sheet area', 'm²', `width × depth ÷ ${MM2_PER_M2}`, { width: widthMm, depth: heightMm });
}

/** kg of so many sheets; with 1000 sheets, the kg per thousand that merchants quote. */
export function boardWeight(sheets: number, board: Board): Figure {
  return figure('board weight', 'kg', 'sheets × sheet area × grammage ÷ 1000', { sheets, 'sheet area': sheetArea(board), grammage: board.grammage });
}

export function sheetsPerTonne(board: Board): Figure {
  return figure('sheets per tonne', 'sheets', '1000000 ÷ (sheet area × grammage)', { 'sheet area': sheetArea(board), grammage: board.grammage });
}

/** What the sheets cost where they are sold by the thousand. */
export function boardCostByThousand(sheets: number, pricePerThousand: Input, currency: string): Figure {
  return figure('board', currency, 'sheets × price per thousand sheets ÷ 1000', { sheets, 'price per thousand sheets': pricePerThousand });
}

export function boardCost(kg: Figure, pricePerTonne: Input, currency: string): Figure {
  return figure('board', currency, 'board weight × price per tonne ÷ 1000', { 'board weight': kg, 'price per tonne': pricePerTonne });
}

/** mm of a stack of sheets, or of cartons glued flat where `thickness` is that of one carton. */
export function pileHeight(sheets: number, thicknessMm: Input): Figure {
  return figure('pile height', 'mm', 'sheets × caliper', { sheets, caliper: thicknessMm });
}

/** Sheets cut from a reel: its width is the sheet's other side. */
export function reelLength(sheets: number, cutLengthMm: number): Figure {
  return figure('reel length', 'm', 'sheets × cut length ÷ 1000', { sheets, 'cut length': cutLengthMm });
}

export function carbon(kg: Figure, perTonne: Input): Figure {
  return figure('carbon of the board', 'kg CO2e', 'board weight × factor ÷ 1000', { 'board weight': kg, factor: perTonne });
}
