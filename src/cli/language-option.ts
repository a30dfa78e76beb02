import { inputError } from '../base/issue.ts';
import type { Language } from '../render/messages/language.ts';
import { LANGUAGES } from '../render/messages/languages.ts';

export const LANGUAGE_TAGS = Object.keys(LANGUAGES).join(', ');

/** The language of a tag. Throws InputError for one that has no words here. */
export function languageValue(tag: string): Language {
  const language = Object.hasOwn(LANGUAGES, tag) ? LANGUAGES[tag] : undefined;
  if (!language) throw inputError('option-not-valid', { where: '--language', facts: { value: tag, expected: `${LANGUAGE_TAGS} are known` } });
  return language;
}

/** Where the job names a country of the language, as de-CH beside de, its figures are written as there. */
export function figuresLocale({ locale }: Language, ofJob: string): string {
  return new Intl.Locale(ofJob).language === locale ? ofJob : locale;
}
