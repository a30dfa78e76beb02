/**
 * No-break spaces where a line may not end: between the thousands of a figure; in French, which sets a space before
 * ; : ! ? and within « », before and after these signs.
 */
export function keepSigns(text: string): string {
  return text.replace(/ (?=[;:!?»])|(?<=«) |(?<=\d) (?=\d{3}(?!\d))/g, '\u00a0');
}
