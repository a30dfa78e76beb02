import { useId } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** The value as people read it. */
  readonly text: string;
  readonly onInput: (value: number) => void;
}

/** Steps over the whole range. */
const STEPS = 120;

/** A slider with even steps of the logarithm: as fine for small figures as for large ones. */
export function SliderField({ label, value, least, most, text, onInput }: Props) {
  const id = useId();
  const valueAt = (step: number) => twoDigits(least * (most / least) ** (step / STEPS));
  const step = Math.round((STEPS * Math.log(value / least)) / Math.log(most / least));
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input id={id} type="range" min={0} max={STEPS} value={step} aria-valuetext={text} onInput={(event) => onInput(valueAt(Number(event.currentTarget.value)))} />
      <output for={id}>{text}</output>
    </div>
  );
}

/** A round figure near by. */
function twoDigits(value: number): number {
  return Number(value.toPrecision(2));
}
