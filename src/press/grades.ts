/** Board grades by their letters (DIN 19303 style) and the common English ones. */
export const GRADES: Readonly<Record<string, string>> = {
  GZ: 'coated solid bleached board',
  GC1: 'coated folding boxboard, white back',
  GC2: 'coated folding boxboard, cream back',
  GN1: 'coated unbleached board, white back',
  GN4: 'coated unbleached board, brown back',
  GT1: 'coated recycled board, white back',
  GT2: 'coated recycled board, cream back',
  GT4: 'coated recycled board, brown back',
  GD1: 'coated recycled board, grey back, bulk over 1.45 cm³/g',
  GD2: 'coated recycled board, grey back, bulk 1.3 to 1.45 cm³/g',
  GD3: 'coated recycled board, grey back, bulk under 1.3 cm³/g',
  UZ: 'uncoated solid bleached board',
  UC1: 'uncoated folding boxboard, white back',
  UC2: 'uncoated folding boxboard, cream back',
  UT1: 'uncoated recycled board, white back',
  UT2: 'uncoated recycled board, cream back',
  UD1: 'uncoated recycled board, grey back',
  SBB: 'solid bleached board',
  SBS: 'solid bleached board',
  FBB: 'folding boxboard',
  WLC: 'white lined chipboard',
  SUB: 'solid unbleached board',
  label: 'label paper',
};

export function isGrade(name: string): boolean {
  return Object.hasOwn(GRADES, name);
}
