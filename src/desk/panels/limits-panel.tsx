import { useDesk } from '../desk-context.ts';
import type { FrameAnswer } from '../engine/protocol.ts';
import type { LimitFields, LimitLength } from '../job/job.ts';
import type { FieldName } from '../job/laying.ts';
import { lengthSentence } from '../words/range-sentence.ts';
import { useWords } from '../words/words.ts';
import { Block, ChoiceField } from './fields.tsx';
import { FramePicture } from './frame-picture.tsx';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { LengthField } from './length-field.tsx';

export function LimitsPanel() {
  const { desk } = useDesk();
  const words = useWords();
  const { say, format } = words;
  const { limits } = desk.job.value;
  const frame = desk.frame.value.kind === 'answer' ? desk.frame.value.answer : undefined;
  const set = (fields: Partial<LimitFields>, kind = '') => desk.change((job) => ({ ...job, limits: { ...job.limits, ...fields } }), kind);
  const faultOf = (field: FieldName) => (desk.faultyFields.value.includes(field) ? lengthSentence(words) : undefined);
  const length = (field: LimitLength) => (
    <LengthField key={field} label={say(`field-${field}`)} value={limits[field]} placeholder={frame && format.bareLength(inForce(frame, field))}
      fault={faultOf(field)} onInput={(text) => set({ [field]: text }, field)} />
  );
  return (
    <Layout
      controls={
        <>
          <Block title={say('knife-limits')}>
            <div class="row">{(['gripper', 'tail', 'sideLeft', 'sideRight'] as const).map(length)}</div>
          </Block>
          <Block title={say('ink-limits')}>
            <div class="row">{(['inkGripper', 'inkTail', 'inkSides'] as const).map(length)}</div>
            <div class="row">
              <ChoiceField label={say('field-bar')} value={limits.bar} onChange={(bar) => set({ bar })}
                options={[['', say('from-press')], ['none', say('bar-none')], ['tail', say('bar-tail')], ['gripper', say('bar-gripper')], ['centre', say('bar-centre')]]} />
              {limits.bar !== '' && limits.bar !== 'none' && (
                <LengthField label={say('field-barHeight')} value={limits.barHeight} fault={faultOf('barHeight')} onInput={(barHeight) => set({ barHeight }, 'bar height')} />
              )}
            </div>
          </Block>
          <Block title={say('between-blanks')}>
            <div class="row">{(['gap', 'bleed'] as const).map(length)}</div>
            <ChoiceField label={say('field-bleed-meeting')} value={limits.bleedMeeting} onChange={(bleedMeeting) => set({ bleedMeeting })}
              options={[['apart', say('bleed-apart')], ['cut', say('bleed-cut')]]} />
          </Block>
          <Block title={say('direction')}>
            <ChoiceField label={say('field-rotations')} value={limits.rotations} onChange={(rotations) => set({ rotations, ...(rotations && { grain: '' }) })}
              options={[['', say('by-grain')], ['0', '0°'], ['0,180', '0°, 180°'], ['0,90', '0°, 90°'], ['0,90,180,270', '0°, 90°, 180°, 270°']]} />
            <ChoiceField label={say('field-grain')} value={limits.grain} onChange={(grain) => set({ grain, ...(grain && { rotations: '' }) })}
              options={[['', say('as-drawn')], ['x', say('drawing-x')], ['y', say('drawing-y')], ['any', say('any-grain')]]} />
            <ChoiceField label={say('field-lay')} value={limits.lay} onChange={(lay) => set({ lay })} options={[['', say('from-press')], ['left', say('left')], ['right', say('right')]]} />
          </Block>
          {frame && frame.notes.length > 0 && (
            <Block title={say('what-binds')}>
              <IssueList issues={frame.notes} />
            </Block>
          )}
        </>
      }
      picture={<FramePicture />}
    />
  );
}

/** The figure that holds while a field is empty, mm. */
function inForce({ usable, printable, gap, bleed, scene: { sheet } }: FrameAnswer, field: LimitLength): number {
  switch (field) {
    case 'gripper': return usable.y;
    case 'tail': return sheet.height - usable.y - usable.height;
    case 'sideLeft': return usable.x;
    case 'sideRight': return sheet.width - usable.x - usable.width;
    case 'inkGripper': return printable.y;
    case 'inkTail': return sheet.height - printable.y - printable.height;
    case 'inkSides': return printable.x;
    case 'gap': return gap;
    case 'bleed': return bleed;
  }
}
