import type { Dieline } from '../../../dieline/dieline.ts';
import { readDrawing } from '../../../dieline/read-drawing.ts';
import { parseRoleRule } from '../../../dieline/role-rule.ts';
import { ruleLengths } from '../../../dieline/rule-lengths.ts';
import { InputError } from '../../../base/issue.ts';
import { dielineOfStyle } from '../../../dieline/styles/dieline-of-style.ts';
import { drawingScene } from '../../../render/drawing-svg.ts';
import { stem } from '../../job/name-of-drawing.ts';
import type { Host } from '../host.ts';
import type { DrawingSource, ReadAnswer, ReadAsk } from '../protocol.ts';
import { languageOf } from './language-of.ts';

export async function read({ source, remembered }: ReadAsk, { locale, goesOn }: Pick<Host<'read'>, 'locale' | 'goesOn'>): Promise<ReadAnswer> {
  const name = nameOf(source);
  const { drawing: words, picture } = languageOf(locale);
  const dieline = await dielineOf(source, remembered, goesOn);
  const { blanks, rest } = dieline;
  const lengths = new Map<string, number>();
  for (const blank of blanks) for (const [role, mm] of Object.entries(ruleLengths(blank))) lengths.set(role, (lengths.get(role) ?? 0) + mm);
  return {
    name,
    dieline,
    scene: blanks.length + rest.length > 0 ? drawingScene(name, dieline, picture.roles, words) : undefined,
    ruleLengths: [...lengths].toSorted(([, a], [, b]) => b - a),
  };
}

export async function dielineOf(source: DrawingSource, remembered: readonly string[], goesOn: () => void): Promise<Dieline> {
  return source.kind === 'style' ? dielineOfStyle(source.style, source.values) : readFile(source, remembered, goesOn);
}

/** Without folder and ending; of a style its name and dimensions. */
function nameOf(source: DrawingSource): string {
  if (source.kind === 'file') return stem(source.name);
  return [source.style, Object.values(source.values).join('x')].join('-');
}

async function readFile({ name, bytes, options }: DrawingSource & { kind: 'file' }, remembered: readonly string[], goesOn: () => void): Promise<Dieline> {
  const rule = (text: string) => parseRoleRule(text, 'role');
  return readDrawing(bytes, {
    roles: options.roles.map(rule),
    habits: remembered.map(rule),
    onWork: goesOn,
    ...(options.scale !== undefined && options.widthIs === undefined && { scale: options.scale }),
    ...(options.widthIs !== undefined && { widthIs: options.widthIs }),
    ...(options.closeGaps !== undefined && { closeGaps: options.closeGaps }),
    ...(options.page !== undefined && { page: options.page }),
    ...(options.blank !== undefined && { blank: options.blank }),
  }).catch((error: unknown) => {
    throw error instanceof InputError ? new InputError(error.issues.map((issue) => ({ where: name, ...issue }))) : error;
  });
}
