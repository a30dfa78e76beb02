import type { Affine } from '../../geometry/affine.ts';
import { mapPoint } from '../../geometry/affine.ts';
import { lengthOf } from '../../geometry/vector.ts';
import type { DrawnText, NameLevel } from '../drawing.ts';
import { numberOf, textOf, type DxfRecord } from './groups.ts';
import { pointOf } from './shapes.ts';

export const TEXT_ENTITIES: ReadonlySet<string> = new Set(['TEXT', 'ATTRIB', 'MTEXT']);

/** A text as far as it helps to understand the drawing: content, place, direction. */
export function drawnText(record: DxfRecord, map: Affine, levels: readonly NameLevel[]): DrawnText | undefined {
  const content = plainText(record);
  const isParagraph = record.type === 'MTEXT';
  const anchor = isParagraph ? ANCHORS[((numberOf(record, 71) ?? 1) - 1) % 3] : ANCHORS[HORIZONTAL[numberOf(record, 72) ?? 0] ?? 0];
  // A single line that is not left and on its baseline stands at its second point.
  const isAligned = !isParagraph && ((numberOf(record, 72) ?? 0) !== 0 || (numberOf(record, 73) ?? 0) !== 0);
  const at = (isAligned ? pointOf(record, 11) : undefined) ?? pointOf(record, 10);
  if (!at || content === '') return undefined;
  const place = mapPoint(map, at);
  const angle = ((numberOf(record, 50) ?? 0) * Math.PI) / 180;
  const along = (isParagraph ? pointOf(record, 11) : undefined) ?? { x: Math.cos(angle), y: Math.sin(angle) };
  const mapped = { x: map.a * along.x + map.c * along.y, y: map.b * along.x + map.d * along.y };
  const length = lengthOf(mapped);
  const heightMm = ((numberOf(record, 40) ?? 0) * length) / lengthOf(along);
  if (!Number.isFinite(place.x + place.y + heightMm) || length === 0) return undefined;
  return { content, place, heightMm, anchor: anchor ?? 'start', direction: { x: mapped.x / length, y: mapped.y / length }, levels };
}

const ANCHORS = ['start', 'middle', 'end'] as const;
/** Justification of a single line to its place in `ANCHORS`. */
const HORIZONTAL: readonly number[] = [0, 1, 2, 0, 1, 0];

/** Without the codes that set type: `{\fArial;80 mm}` and `%%u80 mm` are 80 mm. */
function plainText(record: DxfRecord): string {
  const parts = record.groups.filter(({ code }) => code === 3 || code === 1).map(({ value }) => value);
  const text = record.type === 'MTEXT' ? parts.join('') : (textOf(record, 1) ?? '');
  return text
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replace(/%%[uoUO]/g, '')
    .replace(/%%[dD]/g, '°')
    .replace(/%%[cC]/g, '⌀')
    .replace(/\\P/g, ' ')
    .replace(/\\[ACFHQTWacfhqtwp][^;\\]{0,80};/g, '')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/[{}]/g, '')
    .trim();
}
