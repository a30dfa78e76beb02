import { cupFan, ovalLabel, roundedLabel, roundLabel, wrapLabel } from './labels.ts';
import { fivePanelHanger, gluedEndFlaps, gluedSleeve, hexagonal, pillow } from './other-cartons.ts';
import type { Style } from './style.ts';
import { trayGluedCorners, trayNoGlue } from './trays.ts';
import { reverseTuck, snapBottomCarton, straightTuck, tuckTopCrashLockBottom } from './tuck-cartons.ts';

/** Every style that can be drawn from dimensions. */
export const STYLES: readonly Style[] = [
  straightTuck, reverseTuck, gluedEndFlaps, tuckTopCrashLockBottom, snapBottomCarton, gluedSleeve, hexagonal, pillow,
  trayGluedCorners, trayNoGlue, fivePanelHanger, cupFan, wrapLabel, roundLabel, ovalLabel, roundedLabel,
];
