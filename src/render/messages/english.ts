import { createCatalogue } from './catalogue.ts';
import { commandMessages } from './english-command.ts';
import { geometryMessages } from './english-geometry.ts';
import { layoutMessages } from './english-layout.ts';
import { pressMessages } from './english-press.ts';

export const english = createCatalogue([commandMessages, geometryMessages, layoutMessages, pressMessages]);
