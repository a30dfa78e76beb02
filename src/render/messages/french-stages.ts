import type { Stage } from '../../press/stages.ts';

/** Each with the word that leads to it: `feuilles à la découpe`. */
export const FRENCH_STAGES: Readonly<Record<Stage, readonly [to: string, name: string]>> = {
  printing: ['à l’', 'impression'], coating: ['au ', 'vernissage'], foil: ['à la ', 'dorure à chaud'], embossing: ['au ', 'gaufrage'], 'die-cutting': ['à la ', 'découpe'], stripping: ['au ', 'décorticage'], gluing: ['au ', 'collage'], packing: ['au ', 'conditionnement'],
};
