/** An invented larder: what people in the stories eat. Grams of carbohydrate a helping, minutes to the peak. */
export interface Food {
  name: string;
  grams: number;
  minutes: number;
}

export const BREAKFASTS: readonly Food[] = [
  { name: 'oatmeal with apple', grams: 48, minutes: 45 },
  { name: 'two slices toast, egg', grams: 32, minutes: 40 },
  { name: 'muesli and milk', grams: 52, minutes: 42 },
  { name: 'yoghurt with berries', grams: 24, minutes: 38 },
];

export const LUNCHES: readonly Food[] = [
  { name: 'cheese sandwich', grams: 40, minutes: 45 },
  { name: 'lentil soup and bread', grams: 45, minutes: 55 },
  { name: 'rice bowl with chicken', grams: 62, minutes: 50 },
  { name: 'bean salad', grams: 30, minutes: 55 },
  { name: 'leftover pasta', grams: 65, minutes: 58 },
];

export const DINNERS: readonly Food[] = [
  { name: 'fish, potatoes, peas', grams: 48, minutes: 50 },
  { name: 'pizza', grams: 85, minutes: 78 },
  { name: 'vegetable curry with rice', grams: 68, minutes: 58 },
  { name: 'spaghetti', grams: 72, minutes: 60 },
  { name: 'stew and bread', grams: 44, minutes: 60 },
  { name: 'omelette, salad, roll', grams: 28, minutes: 45 },
];

export const SNACKS: readonly Food[] = [
  { name: 'apple', grams: 16, minutes: 30 },
  { name: 'biscuits', grams: 20, minutes: 35 },
  { name: 'handful of grapes', grams: 15, minutes: 25 },
];
