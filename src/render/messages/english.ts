import { createCatalogue } from './catalogue.ts';
import { commandMessages } from './english-command.ts';
import { layoutMessages } from './english-layout.ts';
import { pressMessages } from './english-press.ts';

export const english = createCatalogue([commandMessages, layoutMessages, pressMessages]);
