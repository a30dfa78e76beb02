import type { LanePool } from './lane-pool.ts';
import type { EventOf, Person, Question } from './protocol.ts';
import type { SearchControl } from './search-control.ts';

/** What an answer may use besides its question. */
export interface Host<Kind extends Question> extends Person {
  readonly emit: (event: EventOf<Kind>) => void;
  readonly control: SearchControl;
  readonly pool: LanePool;
  /** A sign of life of work that asks nothing of `control`: called at every step of it. */
  readonly goesOn: () => void;
}
