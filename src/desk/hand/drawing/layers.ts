/** What can be shown or hidden, in the order in which it is offered. */
export const LAYERS = ['creases', 'openings', 'bleed', 'marks', 'numbers', 'distances', 'grid', 'rule-side'] as const;
export type LayerName = (typeof LAYERS)[number];
/** The layers shown at first. */
export const FIRST_LAYERS: ReadonlySet<LayerName> = new Set(['creases', 'openings', 'bleed', 'marks', 'numbers', 'distances']);
