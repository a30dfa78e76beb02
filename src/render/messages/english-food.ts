import { foodEntries, type FoodField, type FoodRecord } from '../../press/food.ts';

/** Names of what is recorded of a pack for food. */
export const englishFood: Readonly<Record<FoodField, string>> = { contact: 'contact', printSide: 'printed side', inkFamily: 'ink family', fibre: 'fibre', person: 'responsible person', batch: 'batch' };

/** The record on one line. */
export function foodText(food: FoodRecord): string {
  return typeof food === 'string' ? food : foodEntries(food).map(([field, text]) => `${englishFood[field]}: ${text}`).join('; ');
}
