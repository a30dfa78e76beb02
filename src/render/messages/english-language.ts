import { english } from './english.ts';
import { englishBatch } from './english-batch.ts';
import { englishCompare } from './english-compare.ts';
import { englishCutting } from './english-cutting.ts';
import { englishDay } from './english-day.ts';
import { englishDrawing } from './english-drawing.ts';
import { englishFood } from './english-food.ts';
import { englishGang } from './english-gang.ts';
import { englishRun } from './english-run.ts';
import { englishHandover } from './english-handover.ts';
import { englishNearMiss } from './english-near-miss.ts';
import { englishPicture } from './english-picture.ts';
import { englishQuote } from './english-quote.ts';
import { englishReel } from './english-reel.ts';
import { englishReport } from './english-report.ts';
import type { Language } from './language.ts';

export const englishLanguage: Language = { locale: 'en', issues: english, report: englishReport, picture: englishPicture, cutting: englishCutting, handover: englishHandover, gang: englishGang, run: englishRun, day: englishDay, food: englishFood, reel: englishReel, batch: englishBatch, drawing: englishDrawing, compare: englishCompare, nearMiss: englishNearMiss, quote: englishQuote };
