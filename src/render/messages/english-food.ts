import { foodEntries, type FoodField, type FoodRecord } from '../../press/food.ts';

export type FoodWords = Readonly<Record<FoodField, string>>;

/** Names of what is recorded of a pack for food. */
export const englishFood: FoodWords = { contact: 'contact', printSide: 'printed side', inkFamily: 'ink family', fibre: 'fibre', person: 'responsible person', batch: 'batch' };

/** The record on one line. */
export function foodText(food: FoodRecord, words: FoodWords): string {
  return typeof food === 'string' ? food : foodEntries(food).map(([field, text]) => `${words[field]}: ${text}`).join('; ');
}
