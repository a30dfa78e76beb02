import type { Desk, Panel } from './desk.ts';
import type { FieldName } from './job/laying.ts';
import { shownLength, shownSize } from './job/typed-length.ts';
import type { Words } from './words/words.ts';

/** Something on the desk that no layout can be made from, and where it is mended. */
export interface FaultOnDesk {
  readonly panel: Extract<Panel, 'drawing' | 'sheet' | 'limits'>;
  readonly text: string;
}

/** Why there are no inputs: nothing while the drawing is still being read. */
export function faultsOnDesk({ job, reading, faultyFields }: Pick<Desk, 'job' | 'reading' | 'faultyFields'>, { say, format }: Words): readonly FaultOnDesk[] {
  const { value: read } = reading;
  const faults: FaultOnDesk[] = [];
  if (read.kind === 'issues') faults.push({ panel: 'drawing', text: say('drawing-unusable') });
  if (read.kind === 'answer' && read.of === job.value.drawing && read.answer.dieline.blanks.length === 0) faults.push({ panel: 'drawing', text: say('no-blank-found') });
  for (const field of faultyFields.value) faults.push({ panel: field === 'size' ? 'sheet' : 'limits', text: faultText(job.value, field, { say, format }) });
  return faults;
}

function faultText({ sheet, limits }: Desk['job']['value'], field: FieldName, { say, format }: Pick<Words, 'say' | 'format'>): string {
  // As it stands in the field.
  const typed = field === 'size' ? shownSize(sheet.size, format) : shownLength(limits[field], format);
  return typed.trim() === '' ? say('field-empty', { field: say(`field-${field}`) }) : say('field-unusable', { field: say(`field-${field}`), typed });
}
