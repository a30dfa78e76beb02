import { englishLanguage } from './english-language.ts';
import { frenchLanguage } from './french-language.ts';
import { germanLanguage } from './german-language.ts';
import type { Language } from './language.ts';

/** Every language of reports, pictures and pages, by its tag. */
export const LANGUAGES: Readonly<Record<string, Language>> = { en: englishLanguage, de: germanLanguage, fr: frenchLanguage };
