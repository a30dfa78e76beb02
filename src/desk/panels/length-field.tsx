import { useState } from 'preact/hooks';
import type { Format } from '../../render/format.ts';
import { keptLength, keptSize, sameLength, shownLength, shownSize } from '../job/typed-length.ts';
import { useWords } from '../words/words.ts';
import { TextField, type TextProps } from './fields.tsx';

type Props = Omit<TextProps, 'unit' | 'numeric'>;

/** A length in the unit that the desk shows; `value` and what `onInput` gets are as it is kept. */
export function LengthField(props: Props) {
  return <Typed {...props} numeric keep={keptLength} show={shownLength} />;
}

/** Two sides of a sheet, likewise. */
export function SizeField(props: Props) {
  return <Typed {...props} keep={keptSize} show={shownSize} />;
}

interface TypedProps extends Omit<TextProps, 'unit'> {
  readonly keep: (text: string, unit: Format['unit']) => string;
  readonly show: (kept: string, format: Format) => string;
}

/** What is typed stays as it is typed, until the value is changed by something else or shown in another unit. */
function Typed({ keep, show, value, onInput, ...props }: TypedProps) {
  const { format } = useWords();
  const [typed, setTyped] = useState({ text: '', unit: format.unit });
  const isTyped = typed.unit === format.unit && sameLength(keep(typed.text, typed.unit), value);
  return (
    <TextField {...props} unit={format.unit} value={isTyped ? typed.text : show(value, format)}
      onInput={(text) => { setTyped({ text, unit: format.unit }); onInput(keep(text, format.unit)); }} />
  );
}
