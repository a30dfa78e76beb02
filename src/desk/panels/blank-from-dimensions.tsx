import { useState } from 'preact/hooks';
import { STYLES } from '../../dieline/styles/styles.ts';
import { useDesk } from '../desk-context.ts';
import type { DrawingSource } from '../engine/protocol.ts';
import { lengthOf } from '../job/laying.ts';
import { nameOfDrawing } from '../job/name-of-drawing.ts';
import { putDrawing } from '../putting-drawings.ts';
import { lengthSentence } from '../words/range-sentence.ts';
import { useWords } from '../words/words.ts';
import { Block, ChoiceField } from './fields.tsx';
import { LengthField } from './length-field.tsx';

/** A style and its dimensions instead of a drawing. */
export function BlankFromDimensions() {
  const { desk } = useDesk();
  const words = useWords();
  const { say, styleText, format } = words;
  const { drawing } = desk.job.value;
  const present = drawing?.kind === 'style' ? drawing : undefined;
  const [typed, setTyped] = useState(() => typedFor(present, STYLES[0]!.id));
  // Steps back and forward change the blank on the desk, and what stands in the fields with it.
  const { chosen, texts } = typed.of === present ? typed : typedFor(present, typed.chosen);
  const style = STYLES.find(({ id }) => id === chosen)!;
  const draw = (id: string, now: Texts) => {
    const blank = blankOf(id, now);
    setTyped({ of: blank ?? present, chosen: id, texts: now });
    if (blank) putDrawing(desk, blank, 'style');
  };
  const choose = (id: string) => {
    draw(id, Object.fromEntries(Object.entries(texts).filter(([name]) => !style.allowances.some((allowance) => allowance.name === name))));
  };
  const type = (name: string, text: string) => draw(chosen, { ...texts, [name]: text });
  // Allowances have their usual values; one that was set to another is in view.
  const fields = [...style.dimensions, ...style.allowances.filter(({ name }) => texts[name] !== undefined)];
  return (
    <Block isForDoing title={say('drawing-from-dimensions')}>
      <ChoiceField label={say('field-style')} hint={styleText(style.description)} value={chosen} options={STYLES.map(({ id }) => [id, styleText(id.replaceAll('-', ' '))])} onChange={choose} />
      <div class="row">
        {fields.map(({ name, meaning, ...field }) => (
          <LengthField key={name} label={styleText(name)} placeholder={'example' in field ? format.bareLength(field.example) : undefined} value={texts[name] ?? ''} hint={styleText(meaning)}
            fault={lengthOf(texts[name] ?? '') === 'fault' ? lengthSentence(words) : undefined} onInput={(text) => type(name, text)} />
        ))}
      </div>
      {present && !blankOf(chosen, texts) && <p class="hint">{say('dimensions-open', { name: nameOfDrawing(desk.job.value) })}</p>}
    </Block>
  );
}

type StyledBlank = Extract<DrawingSource, { kind: 'style' }>;
type Texts = Readonly<Record<string, string>>;

/** What stands in the fields, and the blank on the desk that it belongs to. */
interface Typed {
  readonly of: StyledBlank | undefined;
  readonly chosen: string;
  readonly texts: Texts;
}

function typedFor(of: StyledBlank | undefined, chosen: string): Typed {
  return { of, chosen: of?.style ?? chosen, texts: of ? textsOf(of.values) : {} };
}

/** Undefined where a dimension is missing or a text is no length. */
function blankOf(style: string, texts: Texts): StyledBlank | undefined {
  const { dimensions, allowances } = STYLES.find(({ id }) => id === style)!;
  const values: Record<string, number> = {};
  for (const { name } of [...dimensions, ...allowances]) {
    const mm = lengthOf(texts[name] ?? '');
    if (mm === 'fault' || (mm === undefined && dimensions.some((dimension) => dimension.name === name))) return undefined;
    if (mm !== undefined) values[name] = mm;
  }
  return { kind: 'style', style, values };
}

function textsOf(values: Readonly<Record<string, number>>): Record<string, string> {
  return Object.fromEntries(Object.entries(values).map(([name, mm]) => [name, String(mm)]));
}
