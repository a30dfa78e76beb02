/** What layouts depend on: two layouts with equal inputs were made from the same things. */
export type Inputs = readonly [fingerprint: string, mmPerUnit: number, options: object, roles: string, drawnFrom: string, laying: object];

/** As one text, by which layouts are kept. */
export function inputsText(inputs: Inputs): string {
  return JSON.stringify(inputs);
}

/** Inputs that differ in the sheet alone: a comparison is about every sheet. */
export function sameButSheet(before: string | undefined, now: string | undefined): boolean {
  return withoutSheet(before) === withoutSheet(now);
}

function withoutSheet(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const [fingerprint, mmPerUnit, options, roles, drawnFrom, laying] = JSON.parse(text) as Inputs;
  return inputsText([fingerprint, mmPerUnit, options, roles, drawnFrom, { ...laying, sheet: undefined, sheetGrain: undefined }]);
}
