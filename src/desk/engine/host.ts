import type { LanePool } from './lane-pool.ts';
import type { EventOf, Question } from './protocol.ts';
import type { SearchControl } from './search-control.ts';

/** What an answer may use besides its question. */
export interface Host<Kind extends Question> {
  readonly emit: (event: EventOf<Kind>) => void;
  readonly control: SearchControl;
  readonly pool: LanePool;
  /** BCP 47 tag of the person's language. */
  readonly locale: string;
}
