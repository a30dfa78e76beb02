/** French sets a space before ; : ! ? and within « »: a no-break one, for no line may begin or end with such a sign alone. */
export function keepSigns(text: string): string {
  return text.replace(/ (?=[;:!?»])|(?<=«) /g, '\u00a0');
}
