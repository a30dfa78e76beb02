import { useState } from 'preact/hooks';
import type { Format } from '../../render/format.ts';
import { isDoubtful, keptFigure, shownFigure } from '../job/typed-figure.ts';
import { keptLength, keptSize, sameLength, shownLength, shownSize } from '../job/typed-length.ts';
import { useWords } from '../words/words.ts';
import { TextField, type TextProps } from './fields.tsx';

/** Of fields for figures `value` and what `onInput` gets are as they are kept; what is seen follows language and unit. */
type Props = Omit<TextProps, 'unit' | 'numeric'>;

/** A length in the unit that the desk shows. */
export function LengthField(props: Props) {
  const { format } = useWords();
  return <Typed {...props} numeric unit={format.unit} keep={keptLength} show={shownLength} />;
}

/** Two sides of a sheet, likewise. */
export function SizeField(props: Props) {
  const { format } = useWords();
  return <Typed {...props} unit={format.unit} keep={keptSize} show={shownSize} />;
}

/** A number with decimals. */
export function NumberField(props: Omit<TextProps, 'numeric'>) {
  return <Typed {...props} numeric keep={(text, { decimalSign }) => keptFigure(text, decimalSign)} show={(kept, { decimalSign }) => shownFigure(kept, decimalSign)} />;
}

interface TypedProps extends TextProps {
  readonly keep: (text: string, format: Format) => string;
  readonly show: (kept: string, format: Format) => string;
}

/** What is typed stays as it is typed, until the field is left, or the value is changed by something else or shown otherwise. */
function Typed({ keep, show, value, fault, onInput, ...props }: TypedProps) {
  const { say, format } = useWords();
  const [typed, setTyped] = useState({ text: '', format });
  const isTyped = typed.format === format && sameLength(keep(typed.text, format), value);
  const text = isTyped ? typed.text : show(value, format);
  return (
    <TextField {...props} value={text} fault={isDoubtful(value) ? say('fault-two-ways', { text: text.trim() }) : fault}
      onInput={(now) => { setTyped({ text: now, format }); onInput(keep(now, format)); }} onLeave={() => setTyped({ text: show(value, format), format })} />
  );
}
