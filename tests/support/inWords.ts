import { optionText } from '../../src/language/shown.ts';
import type { Shown } from '../../src/model/detail.ts';
import type { Issue } from '../../src/model/input.ts';
import { englishSpeaker } from './english.ts';

const say = englishSpeaker('clinic');

/** What an issue shows, as English says it. */
export const shown = (value: Shown | undefined): string | undefined =>
  value === undefined ? undefined : say.value({ q: 'shown', value }).replaceAll('\u00a0', ' ');

/** An issue with what it shows and asks in words, so that a table of cases can be read. */
export function inWords({ actual, expected, question, ...issue }: Issue): Record<string, unknown> {
  return {
    ...issue,
    ...(actual === undefined ? {} : { actual: shown(actual) }),
    ...(expected === undefined ? {} : { expected: shown(expected) }),
    ...(question === undefined ? {} : { option: optionText(question) }),
  };
}
