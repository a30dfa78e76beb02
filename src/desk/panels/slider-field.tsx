import { useId } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** The value as people read it. */
  readonly text: string;
  readonly onInput: (value: number) => void;
  /** Even steps of so much; absent: even steps of the logarithm, as fine for small figures as for large ones. */
  readonly by?: number;
}

/** Steps of the logarithm over the whole range. */
const STEPS = 120;

/** A slider with the value beside it as people read it. */
export function SliderField({ label, value, least, most, text, onInput, by }: Props) {
  const id = useId();
  const steps = by === undefined ? STEPS : Math.round((most - least) / by);
  const valueAt = (step: number) => (by === undefined ? twoDigits(least * (most / least) ** (step / STEPS)) : least + step * by);
  const step = Math.round(by === undefined ? (STEPS * Math.log(value / least)) / Math.log(most / least) : (value - least) / by);
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input id={id} type="range" min={0} max={steps} value={step} aria-valuetext={text} onInput={(event) => onInput(valueAt(Number(event.currentTarget.value)))} />
      <output for={id}>{text}</output>
    </div>
  );
}

/** A round figure near by. */
function twoDigits(value: number): number {
  return Number(value.toPrecision(2));
}
