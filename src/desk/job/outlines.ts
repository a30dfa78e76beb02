import type { DeskLaying, DrawingSource, OutlinesAnswer, OutlinesAsk, SharedBy } from '../engine/protocol.ts';
import { numberOf, wholeOf } from './number-of.ts';
import { NO_OVERS, oversOfEach, type OversFields } from './overs.ts';
import { letterOf } from './versions.ts';

/** Several drawings with their quantities on the forms of one sheet. Fields stay as typed. */
export interface Outlines {
  readonly list: readonly OutlineFields[];
  /** Most forms allowed. */
  readonly forms: string;
  readonly formCost: string;
  readonly pressingCost: string;
  readonly overs: OversFields;
  readonly plan: OutlinesPlan | undefined;
}

export interface OutlineFields {
  /** Stays with the drawing through all changes. */
  readonly id: string;
  readonly name: string;
  readonly quantity: string;
  readonly source: DrawingSource;
  readonly drawnFrom: 'printed' | 'inside';
  /** Limits of its own; where one is empty, that for every drawing holds. */
  readonly overs?: OversFields;
  /** What must agree on a form; absent or empty: as the others that say nothing. */
  readonly sharing?: Partial<Sharing>;
}

/** What decides whether drawings may share a form, as typed; inks with commas between. */
export const SHARING_FIELDS = ['inks', 'board', 'coating', 'delivery', 'foodClass'] as const;
export type SharingField = (typeof SHARING_FIELDS)[number];
export type Sharing = Readonly<Record<SharingField, string>>;

/** Forms as the engine found them, each judged. */
export interface OutlinesPlan extends OutlinesAnswer {
  /** What it was made from, as one text. */
  readonly asked: string;
  readonly names: readonly string[];
  readonly quantities: readonly number[];
}

export const NO_OUTLINES: Outlines = { list: [], forms: '1', formCost: '', pressingCost: '', overs: NO_OVERS, plan: undefined };

/** As many as the engine lays on common forms. */
export const MOST_OUTLINES = 24;
const MOST_FORMS = 12;

export type OutlinesFault = { readonly field: 'name' | 'quantity' | 'ownOvers'; readonly row: number } | { readonly field: 'forms' | 'formCost' | 'pressingCost' | 'overs' };
export type OutlinesJob = { readonly ask: Omit<OutlinesAsk, 'remembered'>; readonly asked: string } | { readonly faults: readonly OutlinesFault[] };

/** What is typed as the engine reads it, or which fields cannot be used. */
export function outlinesJobOf({ list, forms, formCost, pressingCost, overs }: Outlines, laying: DeskLaying, effort: OutlinesAsk['effort']): OutlinesJob {
  const faults: OutlinesFault[] = [];
  const names = list.map(({ name }, row) => name.trim() || letterOf(row));
  const quantities = list.map(({ quantity }, row) => {
    if (names.indexOf(names[row]!) < row) faults.push({ field: 'name', row });
    const value = wholeOf(quantity);
    if (!isCount(value)) faults.push({ field: 'quantity', row });
    return Number(value);
  });
  const most = wholeOf(forms);
  if (!isCount(most) || most > MOST_FORMS) faults.push({ field: 'forms' });
  const [form, pressing] = [numberOf(formCost), numberOf(pressingCost)];
  if (form === 'fault') faults.push({ field: 'formCost' });
  if (pressing === 'fault') faults.push({ field: 'pressingCost' });
  const { limits, isFaulty, rows } = oversOfEach(overs, list.map((outline) => outline.overs), quantities);
  if (isFaulty) faults.push({ field: 'overs' });
  for (const row of rows) faults.push({ field: 'ownOvers', row });
  if (faults.length > 0 || form === 'fault' || pressing === 'fault') return { faults };
  const costs = form === undefined && pressing === undefined ? undefined : { form: form ?? 0, pressing: pressing ?? 0 };
  const designs = list.map(({ source, drawnFrom, sharing }, row) => ({ id: names[row]!, source, drawnFrom, quantity: quantities[row]!, ...(limits && { overs: limits[row]! }), ...sharedBy(sharing) }));
  const ask = { laying, designs, forms: Number(most), ...(costs && { costs }), effort };
  // The bytes of a drawing never change under its id; effort makes no other question.
  const asked = JSON.stringify({ ...ask, effort: undefined, designs: designs.map((design, row) => ({ ...design, source: list[row]!.id })) });
  return { ask, asked };
}

/** What was typed, inks apart from one another. */
function sharedBy(sharing: Partial<Sharing> = {}): SharedBy {
  const { inks, ...fields } = Object.fromEntries(Object.entries(sharing).flatMap(([field, text]) => (text.trim() === '' ? [] : [[field, text.trim()]]))) as Partial<Sharing>;
  return { ...fields, ...(inks !== undefined && { inks: [...new Set(inks.split(/[,;]/).map((ink) => ink.trim()).filter(Boolean))] }) };
}

function isCount(value: number | 'fault' | undefined): value is number {
  return typeof value === 'number' && value >= 1;
}
