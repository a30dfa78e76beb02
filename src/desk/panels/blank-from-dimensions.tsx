import { useState } from 'preact/hooks';
import { STYLES } from '../../dieline/styles/styles.ts';
import { useDesk } from '../desk-context.ts';
import { lengthOf } from '../job/laying.ts';
import { typedExamples } from '../job/typed-length.ts';
import { putDrawing } from '../taking.ts';
import { useWords } from '../words/words.ts';
import { Block, ChoiceField } from './fields.tsx';
import { LengthField } from './length-field.tsx';

/** A style and its dimensions instead of a drawing. */
export function BlankFromDimensions() {
  const { desk } = useDesk();
  const { say, styleText, format } = useWords();
  const { drawing } = desk.job.value;
  const present = drawing?.kind === 'style' ? drawing : undefined;
  const [chosen, setChosen] = useState(present?.style ?? STYLES[0]!.id);
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(present ? textsOf(present.values) : {});
  const style = STYLES.find(({ id }) => id === chosen)!;
  const draw = (id: string, typed: Readonly<Record<string, string>>) => {
    const { dimensions, allowances } = STYLES.find((one) => one.id === id)!;
    const values: Record<string, number> = {};
    for (const { name } of [...dimensions, ...allowances]) {
      const mm = lengthOf(typed[name] ?? '');
      if (mm === 'fault' || (mm === undefined && dimensions.some((dimension) => dimension.name === name))) return;
      if (mm !== undefined) values[name] = mm;
    }
    putDrawing(desk, { kind: 'style', style: id, values }, 'style');
  };
  const choose = (id: string) => {
    const typed = Object.fromEntries(Object.entries(texts).filter(([name]) => !style.allowances.some((allowance) => allowance.name === name)));
    setChosen(id);
    setTexts(typed);
    draw(id, typed);
  };
  const type = (name: string, text: string) => {
    const typed = { ...texts, [name]: text };
    setTexts(typed);
    draw(chosen, typed);
  };
  // Allowances have their usual values; one that was set to another is in view.
  const fields = [...style.dimensions, ...style.allowances.filter(({ name }) => texts[name] !== undefined)];
  return (
    <Block isForDoing title={say('drawing-from-dimensions')}>
      <ChoiceField label={say('field-style')} hint={styleText(style.description)} value={chosen} options={STYLES.map(({ id }) => [id, styleText(id.replaceAll('-', ' '))])} onChange={choose} />
      <div class="row">
        {fields.map(({ name, meaning, ...field }) => (
          <LengthField key={name} label={styleText(name)} placeholder={'example' in field ? format.bareLength(field.example) : undefined} value={texts[name] ?? ''} hint={styleText(meaning)}
            fault={lengthOf(texts[name] ?? '') === 'fault' ? say('fault-length', typedExamples(format)) : undefined} onInput={(text) => type(name, text)} />
        ))}
      </div>
    </Block>
  );
}

function textsOf(values: Readonly<Record<string, number>>): Record<string, string> {
  return Object.fromEntries(Object.entries(values).map(([name, mm]) => [name, String(mm)]));
}
