import { englishLanguage } from '../../../render/messages/english-language.ts';
import type { Language } from '../../../render/messages/language.ts';
import { LANGUAGES } from '../../../render/messages/languages.ts';

/** The language of reports and pictures; English where a language has no words of its own for them. */
export function languageOf(locale: string): Language {
  return LANGUAGES[locale] ?? englishLanguage;
}
