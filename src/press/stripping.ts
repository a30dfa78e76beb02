/** How the waste is taken off the cut sheet: hammered off the pile, by stripping tools, or with a blanking grid that also parts the blanks. */
export const STRIPPING_MODES = ['by-hand', 'with-tools', 'with-blanking'] as const;
export type StrippingMode = (typeof STRIPPING_MODES)[number];

/** `prefer`: among layouts of equal ups the one that strips best. `must`: only layouts that keep the mode's conditions. */
export const STRIPPING_RULES = ['prefer', 'must'] as const;
export type StrippingRule = (typeof STRIPPING_RULES)[number];

export interface StrippingWish {
  readonly mode: StrippingMode;
  readonly rule: StrippingRule;
  /** Waste between two blanks must be at least so wide, whole mm. */
  readonly leastStrip: number;
}

/** What somebody says of it; the rest is left open. */
export type StrippingSaid = { readonly [Field in keyof StrippingWish]?: StrippingWish[Field] | undefined };

/** As the record of a die-cutter says it. */
export interface StrippingOfCutter {
  readonly stripping?: StrippingMode | undefined;
  readonly strippingRule?: StrippingRule | undefined;
  readonly leastStrip?: number | undefined;
}

/** What is said for a job, over what stands with the die-cutter; `none` where nothing is stripped. Undefined where neither names a mode. */
export function strippingWish(said: StrippingSaid | 'none' = {}, cutter: StrippingOfCutter = {}): StrippingWish | undefined {
  if (said === 'none') return undefined;
  const mode = said.mode ?? cutter.stripping;
  return mode && { mode, rule: said.rule ?? cutter.strippingRule ?? 'prefer', leastStrip: said.leastStrip ?? cutter.leastStrip ?? LEAST_STRIP_MM };
}

/** Strips of waste narrower than this tear or hang on, mm: 4 to 5 is common practice, no source. */
export const LEAST_STRIP_MM = 5;

/** A wider strip is no strip, mm. */
export const MOST_LEAST_STRIP_MM = 30;

/** Least frame at tail and sides for tools to grip the waste by, mm: common practice, no source. */
export const LEAST_FRAME_MM = 5;

/** A blanking grid stands in straight ways of at least this, mm: common practice, no source. */
export const LEAST_GRID_MM = 3;

/**
 * What a mode asks of a layout:
 * `strips`: no waste between two blanks narrower than the least strip; slots of one blank are in every layout and do not count;
 * `islands`: no waste enclosed between blanks, which by hand is pushed out one by one;
 * `pins`: every such island has room for a stripping pin as wide as the least strip;
 * `frame`: at least `LEAST_FRAME_MM` at tail and sides;
 * `ways`: every blank in a cell of its own between straight ways of at least `LEAST_GRID_MM`.
 */
export const STRIPPING_CONDITIONS = {
  'by-hand': ['strips', 'islands'],
  'with-tools': ['strips', 'pins', 'frame'],
  'with-blanking': ['strips', 'pins', 'frame', 'ways'],
} as const satisfies Readonly<Record<StrippingMode, readonly string[]>>;
export type StrippingCondition = (typeof STRIPPING_CONDITIONS)[StrippingMode][number];

export function asksFor(mode: StrippingMode, condition: StrippingCondition): boolean {
  return (STRIPPING_CONDITIONS[mode] as readonly StrippingCondition[]).includes(condition);
}
