import type { Point } from '../../geometry/point.ts';
import type { Change, Notice } from './commands/change.ts';
import type { SheetDocument } from './document.ts';
import type { BlankFault } from './facts/live-faults.ts';
import { faultsOf } from './facts/live-faults.ts';
import type { SideDistance } from './facts/distances.ts';
import { advance, beginHistory, type History } from './history.ts';
import type { Interaction } from './interaction/interaction.ts';
import { IDLE } from './interaction/interaction.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { Snapped } from './snapping/snap.ts';
import type { View } from './view.ts';

/**
 * All that the hand knows at one moment, immutable. The document and its history are one part; selection, view and what
 * is under way are others, so that undo never zooms and zooming is never undone.
 */
export interface Situation {
  readonly history: History<SheetDocument>;
  /** What is tried out; absent: nothing is, and the present document is shown. */
  readonly draft: SheetDocument | undefined;
  /** Of the document shown. */
  readonly faults: readonly BlankFault[];
  readonly selected: ReadonlySet<number>;
  /** The blank that keys start from. */
  readonly active: number | undefined;
  readonly view: View;
  readonly interaction: Interaction;
  /** What is shown beside blanks that are being moved. */
  readonly live: Live | undefined;
  readonly measured: Measurement | undefined;
  readonly notice: Notice | undefined;
}

export interface Live {
  readonly distances: readonly SideDistance[];
  /** How far the blanks have come, µm. */
  readonly by: Point;
  readonly snapped: Snapped | undefined;
}

/** From one point of the sheet to another, µm. */
export interface Measurement {
  readonly from: Point;
  readonly to: Point;
}

export function beginSituation(document: SheetDocument, frame: SheetFrame, view: View): Situation {
  return {
    history: beginHistory(document),
    draft: undefined,
    faults: faultsOf(document, frame),
    selected: new Set(),
    active: undefined,
    view,
    interaction: IDLE,
    live: undefined,
    measured: undefined,
    notice: undefined,
  };
}

export function shown({ draft, history }: Situation): SheetDocument {
  return draft ?? history.present;
}

/** A finished change: one step of the history, what was tried out forgotten. */
export function committed(situation: Situation, { document, selected, notice }: Change, done: string): Situation {
  return {
    ...situation,
    history: advance(situation.history, document, done),
    draft: undefined,
    live: undefined,
    interaction: IDLE,
    selected: selected ?? situation.selected,
    notice,
  };
}

/** Back to the mark: whatever is tried out is forgotten. */
export function cancelled(situation: Situation): Situation {
  return { ...situation, draft: undefined, live: undefined, interaction: IDLE };
}

