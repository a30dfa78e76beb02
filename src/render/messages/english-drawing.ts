import type { Severity } from '../../base/issue.ts';
import type { Dieline } from '../../dieline/dieline.ts';
import type { Format } from '../format.ts';
import { counted } from './english-counted.ts';

/** Words of a drawing as understood, in the list and on the picture. */
export const englishDrawing = {
  title: (file: string, blanks: number) => `${file}: ${blanks === 1 ? 'one blank' : `${blanks} blanks`}`,
  blank: (number: number, yAxis: Dieline['yAxis'], [x, y]: readonly [string, string]) => `Blank ${number}, ${yAxis === 'up' ? 'lower left' : 'upper left'} corner at ${x}, ${y} mm`,
  labels: { scale: 'scale', grain: 'grain', tolerances: 'tolerances', fingerprint: 'fingerprint', size: 'size', area: 'area', openings: 'openings', rules: 'rules' },
  scale: (mmPerUnit: number, from: Dieline['scale']['from'], format: Format) => `${format.number(mmPerUnit, 6)} mm a user unit (${englishDrawing.from[from]})`,
  from: { unit: 'unit', 'assumed 96 per inch': 'assumed 96 per inch', 'assumed millimetres': 'assumed millimetres', 'given scale': 'given scale', 'given width': 'given width' } satisfies Record<Dieline['scale']['from'], string> as Readonly<Record<Dieline['scale']['from'], string>>,
  grain: (axis: string | undefined) => (axis === undefined ? 'not said' : `along ${axis}`),
  tolerances: (joinMm: number, closeMm: number, format: Format) => `ends within ${format.length(joinMm)} are one; gaps up to ${format.length(closeMm)} are closed and listed`,
  area: (area: string, openings: number) => `${area}${openings > 0 ? ' (openings not taken off)' : ''}`,
  severity: { note: 'note', warning: 'warning', error: 'error' } satisfies Record<Severity, string> as Readonly<Record<Severity, string>>,
  at: (place: string) => `At ${place}.`,
  leftOut: 'left out',
  picture: { title: (file: string) => `${file} as understood`, description: (blanks: number, remarks: number) => `${counted(blanks, 'blank')}, ${counted(remarks, 'remark')}` },
};

export type DrawingWords = typeof englishDrawing;
