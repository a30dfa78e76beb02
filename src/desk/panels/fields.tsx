import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface FieldProps {
  readonly label: string;
  /** What it means or what an empty field stands for. */
  readonly hint?: string | undefined;
  /** Why the text cannot be used. */
  readonly fault?: string | undefined;
}

export interface TextProps extends FieldProps {
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly onLeave?: () => void;
  readonly placeholder?: string | undefined;
  readonly unit?: string;
  readonly numeric?: boolean;
  /** What a quote calls it: what is missing leads here. */
  readonly rate?: string;
  /** Values to choose from, and what is read beside each; others may be typed. */
  readonly choices?: readonly (readonly [value: string, label?: string])[];
}

export function TextField({ label, hint, fault, value, onInput, onLeave, placeholder, unit, numeric = false, rate, choices }: TextProps) {
  const id = useId();
  const said = [hint !== undefined && `${id}-hint`, fault !== undefined && `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div class={value === '' && !placeholder ? 'field unsaid' : 'field'}>
      <label for={id}>{label}</label>
      <span class="field-box">
        <input id={id} data-rate={rate} value={value} placeholder={placeholder ?? ''} inputMode={numeric ? 'decimal' : 'text'} autocomplete="off" spellcheck={false}
          aria-invalid={fault !== undefined} aria-describedby={said || undefined} list={choices && `${id}-list`}
          onInput={(event) => onInput(event.currentTarget.value)} onBlur={onLeave} />
        {unit !== undefined && <span class="unit">{unit}</span>}
      </span>
      {choices && <datalist id={`${id}-list`}>{choices.map(([choice, said]) => <option key={choice} value={choice} label={said} />)}</datalist>}
      {hint !== undefined && <p id={`${id}-hint`} class="hint">{hint}</p>}
      {fault !== undefined && <p id={`${id}-fault`} class="fault-text">{fault}</p>}
    </div>
  );
}

interface ChoiceProps<Value extends string> extends FieldProps {
  readonly value: Value;
  readonly options: readonly (readonly [value: Value, text: string])[];
  readonly onChange: (value: Value) => void;
}

export function ChoiceField<Value extends string>({ label, hint, value, options, onChange }: ChoiceProps<Value>) {
  const id = useId();
  return (
    <div class={value === '' ? 'field unsaid' : 'field'}>
      <label for={id}>{label}</label>
      <select id={id} value={value} aria-describedby={hint === undefined ? undefined : `${id}-hint`} onChange={(event) => onChange(event.currentTarget.value as Value)}>
        {options.map(([key, text]) => <option key={key} value={key} selected={key === value}>{text}</option>)}
      </select>
      {hint !== undefined && <p id={`${id}-hint`} class="hint">{hint}</p>}
    </div>
  );
}

export function CheckField({ label, checked, onChange }: { readonly label: string; readonly checked: boolean; readonly onChange: (checked: boolean) => void }) {
  return (
    <label class="check">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      {label}
    </label>
  );
}

interface BlockProps {
  readonly title: string;
  /** There is only something to do here: nothing that paper could show. */
  readonly isForDoing?: boolean;
  readonly children: ComponentChildren;
}

/** A block of the controls with its own heading. */
export function Block({ title, isForDoing = false, children }: BlockProps) {
  return (
    <section class={isForDoing ? 'block on-screen' : 'block'}>
      <h3>{title}</h3>
      {children}
    </section>
  );
}
