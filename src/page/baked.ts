import type { Baked } from '../model/baked.ts';
import { kept } from './kept.ts';

/** What a clinic put into its copy of the page, before anyone opened it; null in a plain one. */
export const baked: Baked | null = (() => {
  const text = kept('clinic');
  return text === '' ? null : (JSON.parse(text) as Baked);
})();

/** A setting that the copy begins with, where it is a text. */
export const bakedText = (name: string): string | undefined => {
  const value = baked?.settings[name];
  return typeof value === 'string' ? value : undefined;
};

/** Thresholds that the copy begins with, as a file of them. */
export const bakedThresholds = (): { name: string; text: string } | null =>
  baked?.thresholds === undefined
    ? null
    : { name: bakedText('clinic') ?? baked.date, text: JSON.stringify(baked.thresholds) };
