import { createFormat, type Format } from '../../../render/format.ts';
import { englishLanguage } from '../../../render/messages/english-language.ts';
import type { Language } from '../../../render/messages/language.ts';
import { LANGUAGES } from '../../../render/messages/languages.ts';
import type { Person } from '../protocol.ts';

/** The language of reports and pictures; English where a language has no words of its own for them. */
export function languageOf(locale: string): Language {
  return LANGUAGES[locale] ?? englishLanguage;
}

/** Words and figures as whoever asks reads them. */
export function wordsFor({ locale, unit }: Person): { readonly language: Language; readonly format: Format } {
  const language = languageOf(locale);
  return { language, format: createFormat(language.locale, unit) };
}
