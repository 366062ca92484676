import type { Speaker } from '../language/index.ts';
import { word } from './context.ts';

/**
 * Where a number comes from. Author, journal and year are data and stay as published; what is said about them is a text
 * of `sources`, by its name in braces, and the number of a table.
 */
export const sourceText = (speaker: Speaker, source: string): string =>
  source
    .replace(/\{([\w-]+)\}/g, (_, name: string) => speaker.repeat({ key: `sources.${name}`, params: {} }))
    .replace(/\btable (\d+)/g, (_, n: string) => speaker.say('sources.table', { n: word(n) }));
