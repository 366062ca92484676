import type { Quantity } from './quantity.ts';
import type { FindingAsks, WordParams } from './wordParams.ts';

/** Dotted keys of all messages, as the English words file has them. */
export type WordKey = keyof WordParams;

type Must<K extends WordKey> = Exclude<WordParams[K], 'unit'>;
type May<K extends WordKey> = Extract<WordParams[K], 'unit'>;

/** What the message at a key asks for; of several keys, what any of them asks for. `unit` is always known. */
export type ParamsOf<K extends WordKey, V = Quantity> = Readonly<Record<Must<K>, V> & Partial<Record<May<K>, V>>>;

/** What is given with a key: nothing where its message asks for nothing. Of no one key, so that a misspelt key is named. */
export type Filled<K extends WordKey, V = Quantity> = [WordParams[K]] extends [never]
  ? []
  : [Must<K>] extends [never]
    ? [params?: ParamsOf<K, V>]
    : WordKey extends K
      ? [params?: ParamsOf<K, V>]
      : [params: ParamsOf<K, V>];

/** What follows `P.` in the keys below it: `Below<'bands.low'>` is 'name' | 'patient' | … */
export type Below<P extends string> = WordKey extends infer K ? (K extends `${P}.${infer Rest}` ? Rest : never) : never;

/** Ids under `P.` that have a name: those of measures, indices, findings. */
export type Named<P extends string> = Below<P> extends infer K ? (K extends `${infer Id}.name` ? Id : never) : never;

/** What all the words of one finding ask for. */
export type FindingParams<Id extends keyof FindingAsks> = Id extends string
  ? Readonly<Record<Exclude<FindingAsks[Id], 'unit'>, Quantity>>
  : never;

/** Ids of findings, as far as there are words. */
export type FindingWithWords = keyof FindingAsks;
