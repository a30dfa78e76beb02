import { toMillimetres } from '../../../base/units.ts';
import { degreesOf } from '../../../geometry/turn.ts';
import type { FaultKind } from '../../../layout/judge.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { stationsOf, type Blank } from '../document.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import type { DesignDrawing } from './design-drawings.ts';
import { setAttributes, svg } from './elements.ts';

/** What one blank's element shows now; compared to what it should show, so that only changes touch the page. */
interface Drawn {
  readonly element: SVGGElement;
  readonly use: SVGUseElement;
  readonly number: SVGTextElement;
  readonly lock: SVGPathElement;
  blank: Blank | undefined;
  name: string;
}

export interface BlanksLayer {
  readonly element: SVGGElement;
  /** Brings the elements up to the situation; `before` is what was shown last. */
  show(situation: Situation, before: Situation | undefined): void;
  elementOf(id: number): SVGGElement | undefined;
  useLanguage(words: HandWords, format: Format): void;
}

/** A closed padlock of about one unit height about the origin; our own drawing. */
const LOCK = 'M-0.34 -0.42H0.34V0.12H-0.34Z M-0.22 0.12V0.3A0.22 0.22 0 0 0 0.22 0.3V0.12H0.12V0.3A0.12 0.12 0 0 1 -0.12 0.3V0.12Z';

/** One group for each blank: its drawing by `use`, its number, its lock. */
export function blanksLayer(frame: SheetFrame, drawings: readonly (readonly DesignDrawing[])[], language: { words: HandWords; format: Format }): BlanksLayer {
  const element = svg('g', { class: 'hand-blanks', role: 'listbox', 'aria-multiselectable': 'true' });
  const drawn = new Map<number, Drawn>();
  let stationNumbers = new Map<number, number>();
  let { words, format } = language;

  const add = (id: number): Drawn => {
    const use = svg('use');
    const number = svg('text', { class: 'hand-number', 'aria-hidden': 'true' });
    const lock = svg('path', { class: 'hand-lock', d: LOCK });
    const group = svg('g', { class: 'hand-blank', role: 'option', tabindex: -1, 'data-id': id }, [use, number, lock]);
    const made: Drawn = { element: group, use, number, lock, blank: undefined, name: '' };
    drawn.set(id, made);
    element.append(group);
    return made;
  };

  const place = (made: Drawn, blank: Blank) => {
    const { part, turn, x, y, locked } = blank;
    const drawing = drawings[part][turn];
    setAttributes(made.element, { transform: `translate(${toMillimetres(x)} ${toMillimetres(y)})` });
    if (made.blank?.part !== part || made.blank.turn !== turn) {
      const { x: along, y: up } = drawing.number;
      const size = drawing.numberSize;
      setAttributes(made.use, { href: `#${drawing.id}` });
      setAttributes(made.number, { transform: `translate(${along} ${up - size * 0.36}) scale(1 -1)`, 'font-size': size });
      setAttributes(made.lock, { transform: `translate(${along + size * 1.1} ${up}) scale(${size * 0.9})` });
    }
    made.element.classList.toggle('is-locked', locked);
    made.blank = blank;
  };

  const faultsByBlank = ({ faults }: Situation) => {
    const kinds = new Map<number, Set<FaultKind>>();
    for (const { kind, blanks } of faults) for (const id of blanks) kinds.set(id, (kinds.get(id) ?? new Set()).add(kind));
    return kinds;
  };

  const nameOf = (blank: Blank, faults: ReadonlySet<FaultKind> | undefined) => {
    const box = boxOnSheet(frame, blank);
    return words.blank(
      {
        station: stationNumbers.get(blank.id),
        design: frame.problem.parts[blank.part].id,
        rotation: degreesOf(blank.turn),
        fromLeft: toMillimetres(box.minX),
        fromGripper: toMillimetres(box.minY),
        locked: blank.locked,
        faults: [...(faults ?? [])],
      },
      format,
    );
  };

  const showNames = (situation: Situation) => {
    stationNumbers = new Map(stationsOf(situation.history.present, frame).map(({ id }, i) => [id, i + 1]));
    const kinds = faultsByBlank(situation);
    for (const [id, made] of drawn) {
      made.number.textContent = String(stationNumbers.get(id) ?? '');
      if (made.blank) setAttributes(made.element, { 'aria-label': nameOf(made.blank, kinds.get(id)) });
    }
  };

  const showStates = (situation: Situation) => {
    const kinds = faultsByBlank(situation);
    const entry = situation.active ?? stationEntry(situation);
    for (const [id, { element: group }] of drawn) {
      group.classList.toggle('is-faulty', kinds.has(id));
      const selected = situation.selected.has(id);
      group.classList.toggle('is-selected', selected);
      setAttributes(group, { 'aria-selected': String(selected), tabindex: id === entry ? 0 : -1 });
    }
  };

  const stationEntry = (situation: Situation) => [...stationNumbers].find(([, number]) => number === 1)?.[0] ?? situation.history.present.blanks[0]?.id;

  return {
    element,
    elementOf: (id) => drawn.get(id)?.element,
    useLanguage: (newWords, newFormat) => {
      [words, format] = [newWords, newFormat];
    },
    show: (situation, before) => {
      const document = shown(situation);
      if (!before || document !== shown(before)) {
        const ids = new Set(document.blanks.map(({ id }) => id));
        for (const [id, made] of drawn) {
          if (ids.has(id)) continue;
          made.element.remove();
          drawn.delete(id);
        }
        for (const blank of document.blanks) {
          const made = drawn.get(blank.id) ?? add(blank.id);
          if (made.blank !== blank) place(made, blank);
        }
      }
      const isCommit = !before || situation.history.present !== before.history.present || (before.draft && !situation.draft);
      if (isCommit) showNames(situation);
      if (isCommit || situation.faults !== before.faults || situation.selected !== before.selected || situation.active !== before.active) showStates(situation);
    },
  };
}
