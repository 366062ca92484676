import type { GlucoseUnit } from '../model/glucose.ts';
import type { BandMinutes } from '../model/measures.ts';
import type { Params, Quantity } from '../model/quantity.ts';
import type { Band, Goal, TargetSet } from '../model/targets.ts';
import type { Filled, WordKey } from '../model/words.ts';
import { BANDS } from '../targets/bands.ts';
import { against, goalShare } from './against.ts';
import { duration } from './durations.ts';
import { type LocaleForms, localeForms, type Style } from './locale.ts';
import { type Messages, openMessages } from './messages.ts';
import { quantityChoice, quantityText } from './quantities.ts';
import { dayOf24, stackedTenths } from './shares.ts';
import type { Telling } from './telling.ts';

export interface Speaker {
  language: string;
  direction: 'ltr' | 'rtl';
  /** Whether a clinician has read the safety texts of this language as they stand. */
  reviewed: boolean;
  unit: GlucoseUnit;
  voice: 'clinic' | 'patient';
  /**
   * The message at a dotted key with each quantity turned into text. `{unit}` is always known. Counts choose plural
   * arms by number; `dates` choose `few` (to be named) or `many`; estimates choose `interval` or `point`.
   * A key or parameter that English does not have does not compile. Throws an Error naming what another language lacks.
   */
  say<K extends WordKey>(key: K, ...filled: Filled<K>): string;
  /** Says what was given its key and parameters elsewhere, where types saw to both. Throws as `say` does. */
  repeat(said: { key: string; params: Params }): string;
  /** The same for a key that comes with data, maybe of another version; null where there are no such words. */
  sayIfKnown(key: string, params?: Params): string | null;
  value(q: Quantity, style?: Style): string;
  /** A plain number with exactly so many decimals, as the locale writes it. */
  number(value: number, decimals: number): string;
  /** A share beside a goal: with as many decimals as it takes not to contradict the verdict. */
  against(share: number, goal: Pick<Goal, 'share'>): string;
  /** A goal in words: "below 4 %", "above 70 %". */
  goal(goal: Pick<Goal, 'op' | 'share'>): string;
  /** The five bands of a stack: percentages that sum to 100 (clinic), times that sum to 24 hours (patient). */
  stack(minutes: BandMinutes): Record<Band, string>;
}

export interface SpeakerOptions {
  unit: GlucoseUnit;
  voice: 'clinic' | 'patient';
  targets: TargetSet;
  /** Absent: files name the sensor's limits. */
  unnamed?: Telling['unnamed'];
}

interface Book {
  language: string;
  direction: 'ltr' | 'rtl';
  reviewed: boolean;
  messages: Messages;
  forms: LocaleForms;
}

/** Messages and formatters are the same for every report in a language, so a batch builds them once. */
const books = new WeakMap<object, Book>();

function openBook(words: unknown): Book {
  if (typeof words !== 'object' || words === null) throw new Error('The words of a language are an object of texts.');
  let book = books.get(words);
  if (!book) {
    const { id, locale, direction, review } = words as Record<string, unknown>;
    if (typeof id !== 'string' || typeof locale !== 'string' || (direction !== 'ltr' && direction !== 'rtl')) {
      throw new Error('The words of a language need "id", "locale" and "direction" (ltr or rtl).');
    }
    book = {
      language: id,
      direction,
      reviewed: review === 'reviewed',
      messages: openMessages(words, id, locale),
      forms: localeForms(locale),
    };
    books.set(words, book);
  }
  return book;
}

/** Someone who can say things in one language, unit and voice. `words` is the parsed content of a words file. */
export function speakerOf(words: unknown, options: SpeakerOptions): Speaker {
  const { language, direction, reviewed, messages, forms } = openBook(words);
  const { unit, voice, targets, unnamed = { below: false, above: false } } = options;
  const fill: Telling['fill'] = (
    key: string,
    texts: Readonly<Record<string, string>>,
    choices: Readonly<Partial<Record<string, string | number>>> = {},
  ) =>
    messages.fill(key, (name) => {
      const text = texts[name];
      return text === undefined ? undefined : { text, choice: choices[name] };
    });
  const telling: Telling = { forms, unit, voice, targets, unnamed, fill };
  // In right-to-left text numbers with their units keep their own order.
  const isolate = (text: string): string => (direction === 'rtl' ? `\u2066${text}\u2069` : text);
  const value = (q: Quantity, style?: Style): string => isolate(quantityText(telling, q, style));
  const say = (key: string, params: Params = {}): string =>
    // Told only when the message asks for it: dates and lists take their time.
    messages.fill(key, (name) => {
      const q = Object.hasOwn(params, name) ? params[name] : undefined;
      if (q) return { text: isolate(quantityText(telling, q, undefined, true)), choice: quantityChoice(q) };
      return name === 'unit' ? { text: isolate(unit) } : undefined;
    });

  return {
    language,
    direction,
    reviewed,
    unit,
    voice,
    say: (key, ...[params]) => say(key, params),
    repeat: ({ key, params }) => say(key, params),
    sayIfKnown: (key, params) => (messages.has(key) ? say(key, params) : null),
    value,
    number: (number, decimals) => isolate(forms.number(number, decimals)),
    against: (share, goal) => isolate(against(telling, share, goal)),
    goal: (goal) =>
      isolate(
        fill(`units.goal.${voice}.${goal.op === '<' ? 'under' : 'over'}`, { value: goalShare(telling, goal.share) }),
      ),
    stack(minutes) {
      const day = dayOf24(minutes);
      const tenths = stackedTenths(minutes);
      const texts = {} as Record<Band, string>;
      for (const band of BANDS) {
        const some = minutes[band] > 0;
        if (voice === 'patient') {
          texts[band] = isolate(duration(telling, day[band] === 0 && some ? 0.1 : day[band], 'long'));
        } else {
          const number = forms.number(tenths[band] / 10, 1);
          const least = tenths[band] === 0 && some ? fill('units.under', { value: forms.number(0.1, 1) }) : number;
          texts[band] = isolate(fill('units.percent', { value: least }));
        }
      }
      return texts;
    },
  };
}
