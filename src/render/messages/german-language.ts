import { germanBatch } from './german-batch.ts';
import { german } from './german-catalogue.ts';
import { germanCompare } from './german-compare.ts';
import { germanCutting } from './german-cutting.ts';
import { germanDay } from './german-day.ts';
import { germanDrawing } from './german-drawing.ts';
import { germanFood } from './german-food.ts';
import { germanGang } from './german-gang.ts';
import { germanRun } from './german-run.ts';
import { germanHandover } from './german-handover.ts';
import { germanNearMiss } from './german-near-miss.ts';
import { germanPicture } from './german-picture.ts';
import { germanQuote } from './german-quote.ts';
import { germanReel } from './german-reel.ts';
import { germanReport } from './german-report.ts';
import type { Language } from './language.ts';

/** One German word for each thing, here and on the desk: `tests/render/german-terms.test.ts` lists them with the words that are not used. */
export const germanLanguage: Language = { locale: 'de', issues: german, report: germanReport, picture: germanPicture, cutting: germanCutting, handover: germanHandover, gang: germanGang, run: germanRun, day: germanDay, food: germanFood, reel: germanReel, batch: germanBatch, drawing: germanDrawing, compare: germanCompare, nearMiss: germanNearMiss, quote: germanQuote };
