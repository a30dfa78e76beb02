/** What becomes of the board of one sheet. Every square millimetre has one cause. */
export const WASTE_CAUSES = ['blanks', 'gripper', 'tail', 'side-margins', 'colour-bar', 'keep-outs', 'gaps', 'between', 'edges'] as const;

export type WasteCause = (typeof WASTE_CAUSES)[number];

/** Areas in mm², adding up to the sheet's. `blanks` is the board that is used, openings included. */
export type Waste = Readonly<Record<WasteCause, number>>;
