import { useState } from 'preact/hooks';
import type { Issue } from '../../base/issue.ts';
import { DEFAULT_READ_OPTIONS } from '../../dieline/options.ts';
import { numberFaults } from '../../render/fault-numbers.ts';
import { useDesk } from '../desk-context.ts';
import type { ReadAnswer } from '../engine/protocol.ts';
import { Picture } from '../picture/picture.tsx';
import { takeFile } from '../taking.ts';
import { typedExamples } from '../job/typed-length.ts';
import { useWords } from '../words/words.ts';
import { BlankFromDimensions } from './blank-from-dimensions.tsx';
import { isWidth, useDrawingOptions } from './drawing-actions.ts';
import { BeganAJob } from './drawing-notes.tsx';
import { Block, ChoiceField } from './fields.tsx';
import { FilePicker } from './file-picker.tsx';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { LinesByKind, RememberedRoles, RoleButtons } from './line-roles.tsx';
import { LengthField } from './length-field.tsx';
import { OpenedDrawings } from './opened-drawings.tsx';
import { RecentJobs } from './recent-jobs.tsx';

export function DrawingPanel() {
  const { desk } = useDesk();
  const { say } = useWords();
  const reading = desk.reading.value;
  const [focus, setFocus] = useState<{ x: number; y: number; mm: number }>();
  // Places are in the drawing's own axes; the picture's y runs up.
  const yUp = reading.kind === 'answer' && reading.answer.dieline.yAxis === 'up';
  const goTo = ({ place }: Issue) => place && setFocus({ x: place[0], y: yUp ? place[1] : -place[1], mm: FAULT_VIEW_MM });
  const trySample = () => takeFile(desk, SAMPLE, fetch(`samples/${SAMPLE}`).then((response) => response.arrayBuffer()));
  return (
    <Layout
      controls={
        <>
          <BeganAJob />
          {reading.kind === 'answer' && <WhatWasRead answer={reading.answer} onGoTo={goTo} />}
          {reading.kind === 'issues' && <IssueList issues={reading.issues} />}
          <Block isForDoing title={say(reading.kind === 'none' ? 'drawing-from-file' : 'another-drawing')}>
            <FilePicker isFirst={reading.kind === 'none'} accept=".svg,.dxf,.pdf" label={say('choose-drawing')} hint={say('drop-drawing')} onFile={(name, content) => void takeFile(desk, name, content)} />
            <OpenedDrawings />
            {reading.kind === 'none' && <button type="button" onClick={() => void trySample()}>{say('try-sample')}</button>}
          </Block>
          <BlankFromDimensions />
          <RecentJobs />
        </>
      }
      picture={
        reading.kind === 'answer' && reading.answer.scene ? (
          <Picture scene={reading.answer.scene} name="drawing" label={say('picture-of-drawing', { name: reading.answer.name })} focus={focus} />
        ) : (
          <p class="empty">{say(reading.kind === 'waiting' ? 'reading' : reading.kind === 'issues' ? 'not-readable' : 'empty-desk')}</p>
        )
      }
    />
  );
}

/** A carton of the invented tea maker. */
const SAMPLE = 'reverse-tuck-small.svg';
/** Width of drawing that is seen around a fault, mm. */
const FAULT_VIEW_MM = 40;

function WhatWasRead({ answer: { dieline, ruleLengths }, onGoTo }: { readonly answer: ReadAnswer; readonly onGoTo: (issue: Issue) => void }) {
  const { desk } = useDesk();
  const { say, format, roleName } = useWords();
  const { blanks, issues } = dieline;
  const numbers = numberFaults(issues);
  const options = useDrawingOptions(desk);
  const [blank] = blanks;
  return (
    <>
      <Block title={say('what-was-read')}>
        {blank && blanks.length === 1 && (
          <dl class="facts">
            <dt>{say('size')}</dt>
            <dd>{format.size(blank.box.maxX - blank.box.minX, blank.box.maxY - blank.box.minY)}</dd>
            <dt>{say('area')}</dt>
            <dd>{format.area(blank.areaMm2)}</dd>
            {ruleLengths.map(([role, mm]) => (
              <>
                <dt key={role}>{roleName(role)}</dt>
                <dd>{format.length(mm)}</dd>
              </>
            ))}
          </dl>
        )}
        {options.file && blanks.length > 1 && (
          <ChoiceField label={say('field-blank')} value={String(options.file.blank ?? 1)} onChange={(number) => options.set({ blank: Number(number) })}
            options={blanks.map(({ number, box }) => [String(number), `${number}: ${format.size(box.maxX - box.minX, box.maxY - box.minY)}`])} />
        )}
        {options.file && (
          <LengthField label={say('field-width-is')} hint={say('hint-width-is')} value={options.widthText} fault={isWidth(options.widthText) ? undefined : say('fault-length', typedExamples(format))} onInput={options.setWidth} />
        )}
        {options.file && <GapsAndPage options={options} issues={issues} />}
        <LinesByKind groups={dieline.lineGroups ?? []} />
        <ChoiceField label={say('field-drawn-from')} value={desk.job.value.drawnFrom} onChange={(drawnFrom) => desk.change((job) => ({ ...job, drawnFrom }))}
          options={[['printed', say('printed-side')], ['inside', say('inside')]]} />
      </Block>
      <Block title={say('remarks', { count: issues.length })}>
        {issues.length === 0 && <p>{say('no-remarks')}</p>}
        <IssueList issues={issues} numbers={numbers} onGoTo={onGoTo} actions={(issue) => <RoleButtons issue={issue} />} />
        <RememberedRoles />
      </Block>
    </>
  );
}

/** Widest gaps that may be closed, mm; the first is what holds when nothing is said. */
const GAPS = [DEFAULT_READ_OPTIONS.closeGaps, 1, 2, 5, 10];

/** How wide a gap in the outline may be, and which page of several is meant. */
function GapsAndPage({ options: { file, set }, issues }: { readonly options: ReturnType<typeof useDrawingOptions>; readonly issues: readonly Issue[] }) {
  const { say, format } = useWords();
  const { closeGaps = GAPS[0]!, page } = file ?? {};
  const widths = [...new Set([...GAPS, closeGaps])].toSorted((a, b) => a - b);
  const pages = Number(issues.find(({ code }) => code === 'several-pages')?.facts?.['count'] ?? page ?? 1);
  return (
    <>
      <ChoiceField label={say('field-close-gaps')} value={String(closeGaps)} options={widths.map((mm) => [String(mm), format.length(mm)])} onChange={(mm) => set({ closeGaps: Number(mm) })} />
      {pages > 1 && <ChoiceField label={say('field-page')} value={String(page ?? 1)} options={Array.from({ length: pages }, (_, i) => [String(i + 1), String(i + 1)])} onChange={(number) => set({ page: Number(number) })} />}
    </>
  );
}
