import { toMicrons } from '../base/units.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { partOfDesign } from '../layout/part.ts';
import type { Problem } from '../layout/problem.ts';
import { micronBox, micronRing } from '../layout/rings.ts';
import { barClearance } from '../press/rules.ts';

/** The problem that a layout file answers: its sheet, rules and designs without the placements. Throws like `partOfDesign`. */
export function problemOfLayout({ sheet, usable, printable, lay, keepOut, rules, designs }: LayoutFile): Problem {
  return {
    sheet: { width: toMicrons(sheet.width), height: toMicrons(sheet.height) },
    usable: micronBox(usable),
    printable: micronBox(printable),
    lay,
    keepOuts: keepOut.map(({ kind, ring }) => ({ kind, ring: micronRing(ring), clearance: toMicrons(kind === 'colour-bar' ? barClearance(rules.bleed) : rules.bleed) })),
    rules: { ...rules, gap: toMicrons(rules.gap), bleed: toMicrons(rules.bleed) },
    parts: designs.map(partOfDesign),
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
  };
}
