import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { germanDrawingIssues } from './german-drawing-issues.ts';
import { germanHandoverIssues } from './german-handover-issues.ts';
import { germanIssues, germanTerms } from './german-issues.ts';

/** What stands in reports and on the desk; the command line's own issues are English. */
export const german = createCatalogue([germanDrawingIssues, germanHandoverIssues, germanIssues], { otherwise: english, terms: germanTerms, decimalSign: ',' });
