import { MM_PER_INCH } from '../../base/units.ts';
import type { OrderedSheet, Purchase } from '../../estimate/buying.ts';
import type { InkZones } from '../../estimate/ink-zones.ts';
import { BASIC_SIZES, basisWeightOf, listedMWeight, msfOf, pointsOf, poundsOf } from '../../press/basis-weights.ts';
import type { RateSource } from '../../press/rates.ts';
import type { Format } from '../format.ts';

/** Shares of ink zones in words; a difference smaller than this cannot be seen in them. */
const SEEN = 0.0005;

interface Spread {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

/** How far the zones of an ink differ, as laid out and, where it makes a difference, with every blank upright. */
export function zoneSpread({ shares, upright }: InkZones): { readonly asLaid: Spread; readonly upright: Spread | undefined } {
  const spread = (all: readonly number[]): Spread => ({ mean: all.reduce((sum, share) => sum + share, 0) / all.length, least: Math.min(...all), most: Math.max(...all) });
  const isTurned = Math.max(...shares.map((share, zone) => Math.abs(share - upright[zone]!))) > SEEN;
  return { asLaid: spread(shares), upright: isTurned ? spread(upright) : undefined };
}

/** Quantities from one change of the winner to the next; no `to` for the last. */
export function winningRange(winners: readonly { readonly fromQuantity: number }[], index: number): { readonly from: number; readonly to: number | undefined } {
  const next = winners[index + 1]?.fromQuantity;
  return { from: winners[index]!.fromQuantity, to: next === undefined ? undefined : next - 1 };
}

/** Words that a line to order by counts with. */
export interface PurchaseWords {
  readonly sheets: (count: number) => string;
  readonly packets: (count: number) => string;
  readonly pallets: (count: number) => string;
  readonly pile: (height: string) => string;
  readonly workingDays: (count: number) => string;
  /** Of the line in inches. */
  readonly inInches: (size: string) => string;
  readonly perThousandSquareFeet: (pounds: string) => string;
  readonly perThousandSheets: (pounds: string) => string;
}

/** `1020 (M) × 720 mm`: ISO 217 marks the side that runs with the fibres. */
function sizeText({ widthMm, heightMm, grain }: OrderedSheet, unit: Format['unit'], format: Format): string {
  const side = (mm: number, axis: 'x' | 'y') => (unit === format.unit ? format.bareLength(mm) : format.number(mm / MM_PER_INCH, 3)) + (grain === axis ? ' (M)' : '');
  return `${side(widthMm, 'x')} × ${side(heightMm, 'y')} ${unit}`;
}

export function purchaseLine({ sheet, sheets, kg, packets, pallets, pile, leadDays, delivery }: Purchase, words: PurchaseWords, format: Format): string {
  return joined([
    sizeText(sheet, format.unit, format),
    sheet.grade,
    `${format.number(sheet.grammage)} g/m²`,
    sheet.caliperMm !== undefined && format.caliper(sheet.caliperMm),
    sheet.toleranceMm !== undefined && `± ${format.length(sheet.toleranceMm)}`,
    words.sheets(sheets),
    packets !== undefined && words.packets(packets),
    pallets !== undefined && words.pallets(pallets),
    pile?.value != null && words.pile(pileText(pile.value, format)),
    `${format.number(kg, 1)} kg`,
    leadDays !== undefined && words.workingDays(leadDays),
    delivery,
  ]);
}

export function purchaseLineInInches({ sheet, sheets, kg, basis }: Purchase, words: PurchaseWords, format: Format): string {
  const pounds = (value: number, decimals: number) => `${format.number(value, decimals)} lb`;
  return joined([
    words.inInches(sizeText(sheet, 'in', format)),
    sheet.caliperMm !== undefined && `${format.number(pointsOf(sheet.caliperMm), 1)} pt`,
    basis === undefined ? words.perThousandSquareFeet(pounds(msfOf(sheet.grammage), 1)) : `${pounds(basisWeightOf(sheet.grammage, BASIC_SIZES[basis]), 1)} ${basis}`,
    words.perThousandSheets(pounds(listedMWeight(sheet.grammage, sheet.widthMm / MM_PER_INCH, sheet.heightMm / MM_PER_INCH), 2)),
    words.sheets(sheets),
    pounds(poundsOf(kg), 1),
  ]);
}

/** Nobody measures a pile closer than to a millimetre or a tenth of an inch. */
function pileText(mm: number, { unit, number }: Format): string {
  return unit === 'mm' ? `${number(mm, 0)} mm` : `${number(mm / MM_PER_INCH, 1)} in`;
}

function joined(parts: readonly (string | false | undefined)[]): string {
  return parts.filter(Boolean).join(', ');
}

/** Rates by where they come from: invented ones first, then each record, then what was typed. */
export function ratesBySource(sources: Readonly<Record<string, RateSource>>): { readonly source: RateSource; readonly figures: readonly string[] }[] {
  const keyOf = (source: RateSource) => (source.kind === 'record' ? `1 ${source.name}` : source.kind === 'invented' ? '0' : '2');
  const groups = new Map<string, { source: RateSource; figures: string[] }>();
  for (const [figure, source] of Object.entries(sources)) {
    const group = groups.get(keyOf(source)) ?? { source, figures: [] };
    group.figures.push(figure);
    groups.set(keyOf(source), group);
  }
  return [...groups.keys()].toSorted().map((key) => groups.get(key)!);
}
