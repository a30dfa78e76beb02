import { z } from 'zod';
import type { LayoutFile } from '../layout/layout-file.ts';
import { LEAST_STRIP_MM, MOST_LEAST_STRIP_MM, STRIPPING_CONDITIONS, STRIPPING_MODES, STRIPPING_RULES, type StrippingCondition } from '../press/stripping.ts';
import type { StrippingFacts } from '../render/nest-facts.ts';

const CONDITIONS = [...new Set(Object.values(STRIPPING_CONDITIONS).flat())] as StrippingCondition[];
const ups = z.int().positive().max(100_000);
const broken = z.array(z.looseObject({ condition: z.enum(CONDITIONS), count: z.int().positive() })).max(CONDITIONS.length);

const schema = z.looseObject({
  mode: z.enum(STRIPPING_MODES),
  rule: z.enum(STRIPPING_RULES),
  leastStripMm: z.int().min(1).max(MOST_LEAST_STRIP_MM).default(LEAST_STRIP_MM),
  broken,
  upperBound: ups.optional(),
  other: z.looseObject({ ups, broken }).optional(),
});

/** The wish for stripping that a layout was made to, as its result tells it: told on, not believed. Undefined where it tells none. */
export function strippingAsked({ result }: LayoutFile): StrippingFacts | undefined {
  const parsed = schema.safeParse(result?.['stripping']);
  if (!parsed.success) return undefined;
  const { mode, rule, leastStripMm, upperBound, other, ...found } = parsed.data;
  return { wish: { mode, rule, leastStrip: leastStripMm }, broken: found.broken, ...(other && { other }), ...(upperBound !== undefined && { limit: upperBound }) };
}
