import { roleRuleOf } from '../../dieline/role-rule.ts';
import type { DrawingSource } from '../engine/protocol.ts';
import { EMPTY_JOB, newJob, type Job } from './job.ts';
import { packedFound } from './found-in-file.ts';
import { outlinesFromFile } from './outlines-file.ts';
import { isObject, versionsFromFile } from './versions-file.ts';

/** A job as a file of its own: JSON, the drawing's bytes as base64. */
export function jobToFile(job: Job): string {
  const { drawing } = job;
  const outlines = { ...job.outlines, plan: undefined, list: job.outlines.list.map((one) => ({ ...one, source: packed(one.source) })) };
  return `${JSON.stringify({ ...job, id: undefined, drawing: drawing && packed(drawing), outlines, ...packedFound(job) }, null, 1)}\n`;
}

/** A kept job that this desk cannot read, as it stands: the desk that made it can. */
export function keptToFile(job: unknown): string {
  return `${JSON.stringify(job, (_, value: unknown) => (value instanceof Uint8Array ? toBase64(value) : value), 1)}\n`;
}

function packed(drawing: DrawingSource): object {
  return drawing.kind === 'file' ? { ...drawing, bytes: toBase64(drawing.bytes) } : drawing;
}

/** Undefined for anything that is no such file. Parts that are missing are as in a new job, and it is one of its own. */
export function jobFromFile(content: Readonly<Record<string, unknown>>): Job | undefined {
  if (content['format'] !== EMPTY_JOB.format || content['version'] !== EMPTY_JOB.version) return undefined;
  const { sheet, limits, money, handover, drawing, name, drawnFrom, versions, outlines } = content;
  return {
    ...newJob(),
    name: typeof name === 'string' ? name.slice(0, 200) : '',
    drawnFrom: drawnFrom === 'inside' ? 'inside' : 'printed',
    drawing: drawingOf(drawing),
    sheet: fieldsOf(EMPTY_JOB.sheet, sheet),
    limits: fieldsOf(EMPTY_JOB.limits, limits),
    versions: versionsFromFile(versions),
    outlines: outlinesFromFile(outlines, drawingOf),
    money: fieldsOf(EMPTY_JOB.money, money),
    handover: fieldsOf(EMPTY_JOB.handover, handover),
  };
}

/** Known fields of the known kind only. Layouts and forms are not taken over here: they are judged first (`found-in-file.ts`). */
function fieldsOf<Fields extends object>(empty: Fields, given: unknown): Fields {
  if (!isObject(given)) return empty;
  return Object.fromEntries(Object.entries(empty).map(([field, usual]) => [field, sameKind(usual, given[field]) ? given[field] : usual])) as Fields;
}

function sameKind(usual: unknown, given: unknown): boolean {
  return Array.isArray(usual) ? Array.isArray(given) && given.every((one) => typeof one === 'string') : typeof given === typeof usual;
}

function drawingOf(given: unknown): Job['drawing'] {
  if (!isObject(given)) return undefined;
  const { kind, name, bytes, options, style, values } = given;
  if (kind === 'style' && typeof style === 'string' && isObject(values)) {
    return { kind, style, values: Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => typeof entry[1] === 'number')) };
  }
  if (kind !== 'file' || typeof name !== 'string' || typeof bytes !== 'string') return undefined;
  const { roles, scale, widthIs, blank, page, closeGaps } = isObject(options) ? options : {};
  return {
    kind,
    name,
    bytes: fromBase64(bytes),
    options: { roles: Array.isArray(roles) ? roles.filter((rule): rule is string => typeof rule === 'string' && roleRuleOf(rule) !== undefined) : [], ...(typeof scale === 'number' && { scale }), ...(typeof widthIs === 'number' && { widthIs }), ...(typeof blank === 'number' && { blank }), ...(typeof page === 'number' && { page }), ...(typeof closeGaps === 'number' && { closeGaps }) },
  };
}

/** Long lists of arguments overflow the stack. */
const CHUNK = 8192;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += CHUNK) text += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  return btoa(text);
}

function fromBase64(text: string): Uint8Array {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array();
  }
}
