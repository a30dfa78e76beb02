import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { germanDrawingIssues } from './german-drawing-issues.ts';
import { germanHandoverIssues } from './german-handover-issues.ts';
import { germanIssues, germanTerms } from './german-issues.ts';
import { germanPhrase } from './german-phrases.ts';
import { germanReasons } from './german-reasons.ts';
import { germanRefusals } from './german-refusals.ts';

/** How facts of issues are worded. */
export const germanFacts = { terms: germanTerms, phrase: germanPhrase, reasons: germanReasons, decimalSign: ',' } as const;

/** What stands in reports and on the desk; the command line's own issues are English. */
export const german = createCatalogue([germanDrawingIssues, germanHandoverIssues, germanIssues, germanRefusals], { otherwise: english, ...germanFacts });
