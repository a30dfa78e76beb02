import type { FoodWords } from './english-food.ts';

/** Was zu einer Lebensmittelpackung vermerkt ist. */
export const germanFood: FoodWords = { contact: 'Kontakt', printSide: 'bedruckte Seite', inkFamily: 'Farbserie', fibre: 'Faser', person: 'verantwortliche Person', batch: 'Charge' };
