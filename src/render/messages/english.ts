import { createCatalogue } from './catalogue.ts';
import { commandMessages } from './english-command.ts';

export const english = createCatalogue([commandMessages]);
