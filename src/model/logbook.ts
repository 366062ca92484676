/** Parts of the day a meal is compared within; `snack` only where the person wrote so. */
export type Slot = 'morning' | 'midday' | 'afternoon' | 'evening' | 'night' | 'snack';

/** Words people use in logbooks, as a clinic may edit them. All in lower case; comparing ignores case. */
export interface LogWords {
  /** Words for how much, left out of a food's name: slice, bowl, large, two. */
  amounts: string[];
  /** Words between two foods of one note: and, with a comma in its place. */
  joins: string[];
  /** Endings of several things and of one, tried in this order: `ies` → `y`. */
  plurals: [several: string, one: string][];
  /** One name for foods that are written in different ways. */
  foods: Record<string, string[]>;
  /** What people write for the meals of the day. */
  meals: Partial<Record<Slot, string[]>>;
  /** Foods that are noted when a low is being treated. */
  treatsLow: string[];
  effort: { light: string[]; hard: string[] };
  /** Insulin that is no part of any meal. */
  longActing: string[];
  /** Words in which people say how a low or a high felt; absent: nobody looks for them. */
  felt?: string[] | undefined;
}
