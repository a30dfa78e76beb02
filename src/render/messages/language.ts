import type { Catalogue } from './catalogue.ts';
import type { BatchWords } from './english-batch.ts';
import type { CompareWords } from './english-compare.ts';
import type { CuttingWords } from './english-cutting.ts';
import type { DayWords } from './english-day.ts';
import type { DrawingWords } from './english-drawing.ts';
import type { FoodWords } from './english-food.ts';
import type { GangWords } from './english-gang.ts';
import type { HandoverWords } from './english-handover.ts';
import type { NearMissWords } from './english-near-miss.ts';
import type { QuoteWords } from './english-quote.ts';
import type { Product } from '../quote-facts.ts';
import type { RunWords } from './english-run.ts';
import type { ReelWords } from './english-reel.ts';
import type { PictureWords, ReportWords } from './words.ts';

/** Everything that is said to people in one language. A new language is one such object made from its own tables. */
export interface Language {
  /** BCP 47 tag, for the decimal sign and for `lang` in HTML. */
  readonly locale: string;
  readonly issues: Catalogue;
  readonly report: ReportWords;
  readonly picture: PictureWords;
  readonly cutting: CuttingWords;
  readonly handover: HandoverWords;
  readonly gang: GangWords;
  readonly run: RunWords;
  readonly day: DayWords;
  readonly food: FoodWords;
  readonly reel: ReelWords;
  readonly batch: BatchWords;
  readonly drawing: DrawingWords;
  readonly compare: CompareWords;
  readonly nearMiss: NearMissWords;
  /** Of a quote, by what is made. */
  readonly quote: (product: Product) => QuoteWords;
}
