import type { FoodWords } from './english-food.ts';

/** Ce qui est noté d’un emballage alimentaire. */
export const frenchFood: FoodWords = { contact: 'contact alimentaire', printSide: 'côté imprimé', inkFamily: 'famille d’encres', fibre: 'type de fibre', person: 'personne responsable', batch: 'lot' };
