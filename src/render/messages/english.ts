import { createCatalogue } from './catalogue.ts';
import { commandMessages } from './english-command.ts';
import { dielineMessages } from './english-dieline.ts';
import { estimateMessages } from './english-estimate.ts';
import { geometryMessages } from './english-geometry.ts';
import { artworkMessages, handoverMessages } from './english-handover.ts';
import { layingMessages } from './english-laying.ts';
import { layoutMessages } from './english-layout.ts';
import { openMessages } from './english-open.ts';
import { pressMessages } from './english-press.ts';
import { englishReasons } from './english-reasons.ts';
import { shopMessages } from './english-shop.ts';
import { styleMessages } from './english-styles.ts';

export const english = createCatalogue([
  artworkMessages,
  commandMessages,
  dielineMessages,
  estimateMessages,
  geometryMessages,
  handoverMessages,
  layingMessages,
  layoutMessages,
  openMessages,
  pressMessages,
  shopMessages,
  styleMessages,
], { reasons: englishReasons });
