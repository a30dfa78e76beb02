import type { FaultKind } from '../../layout/judge.ts';
import type { Format } from '../format.ts';

/** What is told of one blank to somebody who does not see it. */
export interface BlankFacts {
  readonly station: number | undefined;
  readonly design: string;
  readonly rotation: number;
  /** From the left edge of the sheet and from the gripper edge to the blank's box, mm. */
  readonly fromLeft: number;
  readonly fromGripper: number;
  readonly locked: boolean;
  readonly faults: readonly FaultKind[];
}

/** Whether the layout shown has been judged, and how. */
export type JudgedState = 'not judged' | 'sound' | 'faulty' | 'out of date';

/** A name on a button, and what it does in one line. */
export interface CommandWords {
  readonly name: string;
  readonly does: string;
}

/** Words of laying out blanks by hand. One object a language. `Command` and the like are names in the code, never shown. */
export interface HandWords {
  /** Of the whole picture. */
  readonly sheet: (size: string, blanks: number) => string;
  readonly blank: (facts: BlankFacts, format: Format) => string;
  readonly commands: Readonly<Record<string, CommandWords>>;
  /** Headings of groups of buttons. */
  readonly groups: Readonly<Record<'history' | 'edit' | 'arrange' | 'ask' | 'look', string>>;
  readonly layers: Readonly<Record<string, string>>;
  readonly toolbar: string;
  readonly layersTitle: string;
  readonly alignTitle: string;
  readonly notices: Readonly<Record<string, string>>;
  readonly states: Readonly<Record<JudgedState, string>>;
  /** While something asked for is under way. */
  readonly working: Readonly<Record<'solve-rest' | 'tidy', string>>;
  /** How far it has come: the best so far and the least limit known, as far as they are. */
  readonly progress: (best: number | undefined, limit: number | undefined, time: string) => string;
  readonly stopping: string;
  readonly faultKinds: Readonly<Record<FaultKind, string>>;
  readonly selected: (count: number, ups: number) => string;
  /** `gapMm`: what must lie between knives. */
  readonly fault: (kind: FaultKind, byMm: number, gapMm: number, format: Format) => string;
  readonly step: string;
  /** Over the sheet while it is seen mirrored. */
  readonly ruleSide: string;
  readonly measured: (alongMm: number, awayMm: number, distanceMm: number, format: Format) => string;
  readonly moved: (alongMm: number, awayMm: number, format: Format) => string;
  readonly grid: {
    readonly title: string;
    readonly rows: string;
    readonly columns: string;
    readonly whole: string;
    /** How many rows, and of how many columns, the sheet holds with these steps. */
    readonly most: (rows: number, columns: number) => string;
    readonly stepAlong: string;
    readonly stepAway: string;
    readonly tightest: string;
    readonly done: string;
    readonly leave: string;
    readonly notANumber: string;
  };
  readonly keysTitle: string;
  readonly keyNames: Readonly<Record<string, string>>;
  readonly pointerTitle: string;
  /** What can be done with a mouse, pen or finger: the gesture and what it does. */
  readonly gestures: readonly (readonly [gesture: string, does: string])[];
  readonly close: string;
}
