import { createCatalogue } from './catalogue.ts';
import { commandMessages } from './english-command.ts';
import { pressMessages } from './english-press.ts';

export const english = createCatalogue([commandMessages, pressMessages]);
