import { z } from 'zod';

const text = z.string().min(1).max(500);

/** What is recorded of a pack for food, in the words of whoever records it. Nothing of it is judged. */
export const FOOD_FIELDS = ['contact', 'printSide', 'inkFamily', 'fibre', 'person', 'batch'] as const;
export type FoodField = (typeof FOOD_FIELDS)[number];

export const foodSchema = z.union([text, z.strictObject({ contact: text.optional(), printSide: text.optional(), inkFamily: text.optional(), fibre: text.optional(), person: text.optional(), batch: text.optional() })]);
export type FoodRecord = z.infer<typeof foodSchema>;

/** The fields that were filled in, in the order in which they are read. */
export function foodEntries(food: FoodRecord): (readonly [FoodField, string])[] {
  return typeof food === 'string' ? [] : FOOD_FIELDS.flatMap((field) => (food[field] === undefined ? [] : [[field, food[field]] as const]));
}
