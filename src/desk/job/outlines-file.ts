import type { DrawingSource } from '../engine/protocol.ts';
import { MOST_OUTLINES, NO_OUTLINES, SHARING_FIELDS, type OutlineFields, type Outlines } from './outlines.ts';
import { isObject, isText, oversFromFile } from './versions-file.ts';

/** Several outlines as a job file holds them; none where they cannot be read. Forms are sought anew. */
export function outlinesFromFile(given: unknown, drawingOf: (given: unknown) => DrawingSource | undefined): Outlines {
  if (!isObject(given) || !Array.isArray(given['list'])) return NO_OUTLINES;
  const list = given['list'].slice(0, MOST_OUTLINES).map((one) => outlineOf(one, drawingOf));
  if (!list.every((one) => one !== undefined) || new Set(list.map(({ id }) => id)).size < list.length) return NO_OUTLINES;
  const text = (field: 'forms' | 'formCost' | 'pressingCost') => (isText(given[field]) ? given[field] : NO_OUTLINES[field]);
  return { list, forms: text('forms'), formCost: text('formCost'), pressingCost: text('pressingCost'), overs: oversFromFile(given['overs']), plan: undefined };
}

function outlineOf(given: unknown, drawingOf: (given: unknown) => DrawingSource | undefined): OutlineFields | undefined {
  if (!isObject(given)) return undefined;
  const { id, name, quantity, drawnFrom, overs, sharing } = given;
  const source = drawingOf(given['source']);
  if (!isText(id) || id === '' || !isText(name) || !isText(quantity) || !source) return undefined;
  const shares = isObject(sharing) ? Object.fromEntries(SHARING_FIELDS.flatMap((field) => (isText(sharing[field]) ? [[field, sharing[field]]] : []))) : undefined;
  return { id, name, quantity, source, drawnFrom: drawnFrom === 'inside' ? 'inside' : 'printed', ...(isObject(overs) && { overs: oversFromFile(overs) }), ...(shares && { sharing: shares }) };
}
