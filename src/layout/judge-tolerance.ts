/**
 * What the judge lets pass, mm: layout files hold three decimals, so two rounded positions may err by 0.0014 together,
 * and chords of curves by 0.001. A real fault of 0.01 is five times as large.
 */
export const JUDGE_TOLERANCE_MM = 0.002;

/** How far a design's outline may lie outside its true curves before the file is faulty, mm. Inside them: the judge's tolerance. */
export const OUTLINE_TOLERANCE_MM = 0.05;
