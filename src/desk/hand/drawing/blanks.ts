import { toMillimetres } from '../../../base/units.ts';
import type { FaultKind } from '../../../layout/judge.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { stationsOf, type Blank, type SheetDocument } from '../document.ts';
import { blankFacts } from '../facts/blank-facts.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import type { DesignDrawing } from './design-drawings.ts';
import { setAttributes, svg } from './elements.ts';
import { numberPlace, underWay } from './lifted.ts';

/** What one blank's element shows now; compared to what it should show, so that only changes touch the page. */
interface Drawn {
  readonly element: SVGGElement;
  readonly use: SVGUseElement;
  readonly number: SVGTextElement;
  readonly lock: SVGPathElement;
  blank: Blank | undefined;
  mirrored: boolean;
}

export interface BlanksLayer {
  readonly element: SVGGElement;
  /** Brings the elements up to the situation; `before` is what was shown last. */
  show(situation: Situation, before: Situation | undefined): void;
  elementOf(id: number): SVGGElement | undefined;
  stationOf(id: number): number | undefined;
  useLanguage(words: HandWords, format: Format): void;
}

/** A closed padlock of about one unit height about the origin; our own drawing. */
const LOCK = 'M-0.34 -0.42H0.34V0.12H-0.34Z M-0.22 0.12V0.3A0.22 0.22 0 0 0 0.22 0.3V0.12H0.12V0.3A0.12 0.12 0 0 1 -0.12 0.3V0.12Z';

/** One group for each blank: its drawing by `use`, its number, its lock. Blanks under way stay where they were, pale. */
export function blanksLayer(frame: SheetFrame, drawings: readonly (readonly DesignDrawing[])[], language: { words: HandWords; format: Format }): BlanksLayer {
  const element = svg('g', { class: 'hand-blanks', role: 'listbox', 'aria-multiselectable': 'true' });
  const drawn = new Map<number, Drawn>();
  const marks = createMarks((id) => drawn.get(id)?.element);
  let stations = new Map<number, number>();
  let { words, format } = language;
  let mirrored = false;

  const add = (id: number): Drawn => {
    const use = svg('use');
    const number = svg('text', { class: 'hand-number', 'aria-hidden': 'true' });
    const lock = svg('path', { class: 'hand-lock', d: LOCK });
    const group = svg('g', { class: 'hand-blank', role: 'option', tabindex: -1, 'aria-selected': 'false', 'data-id': id }, [use, number, lock]);
    const made: Drawn = { element: group, use, number, lock, blank: undefined, mirrored };
    drawn.set(id, made);
    element.append(group);
    return made;
  };

  const place = (made: Drawn, blank: Blank) => {
    const { part, turn, x, y, locked } = blank;
    const { id, number, numberSize } = drawings[part][turn];
    setAttributes(made.element, { transform: `translate(${toMillimetres(x)} ${toMillimetres(y)})` });
    if (made.blank?.part !== part || made.blank.turn !== turn || made.mirrored !== mirrored) {
      setAttributes(made.use, { href: `#${id}` });
      setAttributes(made.number, numberPlace(number, numberSize, mirrored));
      setAttributes(made.lock, { transform: `translate(${number.x + numberSize * 1.1} ${number.y}) scale(${numberSize * 0.9})` });
    }
    made.element.classList.toggle('is-locked', locked);
    made.blank = blank;
    made.mirrored = mirrored;
  };

  const placeAll = ({ blanks }: SheetDocument) => {
    const ids = new Set(blanks.map(({ id }) => id));
    for (const [id, made] of drawn) {
      if (ids.has(id)) continue;
      made.element.remove();
      drawn.delete(id);
    }
    for (const blank of blanks) {
      const made = drawn.get(blank.id) ?? add(blank.id);
      if (made.blank !== blank || made.mirrored !== mirrored) place(made, blank);
    }
  };

  const nameAll = (document: SheetDocument, kinds: ReadonlyMap<number, ReadonlySet<FaultKind>>) => {
    stations = new Map(stationsOf(document, frame).map(({ id }, i) => [id, i + 1]));
    for (const [id, made] of drawn) {
      const station = stations.get(id);
      made.number.textContent = String(station ?? '');
      setAttributes(made.element, { 'aria-label': nameOf(made.blank!, station, kinds.get(id)) });
    }
  };

  const nameOf = (blank: Blank, station: number | undefined, faults: ReadonlySet<FaultKind> | undefined) => words.blank(blankFacts(blank, station, [...(faults ?? [])], frame), format);

  return {
    element,
    elementOf: (id) => drawn.get(id)?.element,
    stationOf: (id) => stations.get(id),
    useLanguage: (newWords, newFormat) => {
      [words, format] = [newWords, newFormat];
    },
    show: (situation, before) => {
      const document = drawnDocument(situation);
      const isTurnedOver = mirrored !== (situation.view.mirrored ?? false);
      mirrored = situation.view.mirrored ?? false;
      if (!before || isTurnedOver || document !== drawnDocument(before)) placeAll(document);
      if (!before || situation.faults !== before.faults || situation.selected !== before.selected || situation.active !== before.active || underWay(situation) !== underWay(before)) {
        const kinds = faultKinds(situation);
        if (!situation.draft) nameAll(situation.history.present, kinds);
        const first = [...stations].find(([, number]) => number === 1)?.[0];
        const lifted = new Set(underWay(situation).map(({ id }) => id));
        marks.show({
          'is-faulty': new Set([...kinds.keys()].filter((id) => !lifted.has(id))),
          'is-selected': situation.selected,
          'is-lifted': lifted,
          'is-entry': new Set([situation.active ?? first ?? -1]),
        });
      }
    },
  };
}

/** What stands on the sheet itself: blanks under way only get there when they are dropped. */
function drawnDocument(situation: Situation): SheetDocument {
  return underWay(situation).length > 0 ? situation.history.present : shown(situation);
}

function faultKinds({ faults }: Situation): Map<number, Set<FaultKind>> {
  const kinds = new Map<number, Set<FaultKind>>();
  for (const { kind, blanks } of faults) for (const id of blanks) kinds.set(id, (kinds.get(id) ?? new Set()).add(kind));
  return kinds;
}

type MarkName = 'is-faulty' | 'is-selected' | 'is-lifted' | 'is-entry';
type Marked = Readonly<Record<MarkName, ReadonlySet<number>>>;
const NO_MARKS: Marked = { 'is-faulty': new Set(), 'is-selected': new Set(), 'is-lifted': new Set(), 'is-entry': new Set() };

/** Sets and takes away marks of blanks; only those that change are touched. */
function createMarks(elementOf: (id: number) => SVGGElement | undefined): { show(marked: Marked): void } {
  let last = NO_MARKS;
  const set = (name: MarkName, id: number, isSet: boolean) => {
    const element = elementOf(id);
    element?.classList.toggle(name, isSet);
    if (element && name === 'is-selected') setAttributes(element, { 'aria-selected': String(isSet) });
    if (element && name === 'is-entry') setAttributes(element, { tabindex: isSet ? 0 : -1 });
  };
  return {
    show: (marked) => {
      for (const name of Object.keys(marked) as MarkName[]) {
        for (const id of last[name]) if (!marked[name].has(id)) set(name, id, false);
        // An element made anew has no marks yet.
        for (const id of marked[name]) if (!last[name].has(id) || !elementOf(id)?.classList.contains(name)) set(name, id, true);
      }
      last = marked;
    },
  };
}
