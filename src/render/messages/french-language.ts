import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { frenchBatch } from './french-batch.ts';
import { frenchCompare } from './french-compare.ts';
import { frenchCutting } from './french-cutting.ts';
import { frenchDay } from './french-day.ts';
import { frenchDrawingIssues } from './french-drawing-issues.ts';
import { frenchDrawing } from './french-drawing.ts';
import { frenchFood } from './french-food.ts';
import { frenchGang } from './french-gang.ts';
import { frenchRun } from './french-run.ts';
import { frenchHandoverIssues } from './french-handover-issues.ts';
import { frenchIssues, frenchTerms } from './french-issues.ts';
import { frenchHandover } from './french-handover.ts';
import { frenchNearMiss } from './french-near-miss.ts';
import { frenchPhrase } from './french-phrases.ts';
import { frenchPicture } from './french-picture.ts';
import { frenchQuote } from './french-quote.ts';
import { frenchReasons } from './french-reasons.ts';
import { frenchReel } from './french-reel.ts';
import { frenchReport } from './french-report.ts';
import type { Language } from './language.ts';

const issues = createCatalogue([frenchDrawingIssues, frenchHandoverIssues, frenchIssues], { otherwise: english, terms: { ...frenchPicture.roles, ...frenchTerms }, phrase: frenchPhrase, reasons: frenchReasons, decimalSign: ',' });

export const frenchLanguage: Language = { locale: 'fr', issues, report: frenchReport, picture: frenchPicture, cutting: frenchCutting, handover: frenchHandover, gang: frenchGang, run: frenchRun, day: frenchDay, food: frenchFood, reel: frenchReel, batch: frenchBatch, drawing: frenchDrawing, compare: frenchCompare, nearMiss: frenchNearMiss, quote: frenchQuote };
