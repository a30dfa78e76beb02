import { LOCALES, type Locale } from './words.ts';

/** The first of the browser's languages that the desk speaks. */
export function preferredLocale(): Locale {
  for (const language of navigator.languages) {
    const found = LOCALES.find((locale) => language.toLowerCase().startsWith(locale));
    if (found) return found;
  }
  return 'en';
}
