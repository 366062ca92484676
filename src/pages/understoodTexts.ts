import type { Speaker } from '../language/index.ts';
import type { Choice, ClockForm } from '../model/choices.ts';
import type { DateOrder, Shown } from '../model/detail.ts';

type OwnWord =
  | 'tab'
  | 'blanks'
  | 'pairs'
  | 'none'
  | 'both'
  | 'row-order'
  | 'named-column'
  | 'sensor'
  | 'finger-stick'
  | 'columns'
  | ClockForm
  | DateOrder;

const shown = (speaker: Speaker, value: Shown): string => speaker.value({ q: 'shown', value });

/** The value of a choice as the paper says it: names and marks of the file unchanged, our own words in its language. */
export function valueText(speaker: Speaker, choice: Choice): string {
  const ours = (word: OwnWord): string => speaker.say(`understood.${word}`);
  switch (choice.id) {
    case 'encoding':
    case 'decimal-mark':
    case 'values':
    case 'zone':
    case 'offset':
    case 'start':
      return shown(speaker, choice.value);
    case 'date-carried':
    case 'day-headings':
      return speaker.number(choice.value, 0);
    case 'serial-dates':
    case 'year':
      return String(choice.value);
    case 'delimiter':
      return choice.value.length > 1 ? ours(choice.value as 'tab' | 'blanks' | 'pairs') : choice.value;
    case 'header':
      return choice.value === 'none' ? ours('none') : shown(speaker, { is: 'line', line: choice.value });
    case 'unit':
      return choice.value === 'both' ? ours('both') : choice.value;
    case 'columns':
      return choice.value.map((column) => shown(speaker, { is: 'column', ...column })).join(', ');
    case 'clock':
    case 'date-order':
    case 'half-of-day':
    case 'glucose-kind':
    case 'layout':
      return ours(choice.value);
  }
}

export const evidenceText = (speaker: Speaker, { evidence }: Choice): string =>
  evidence === undefined ? '' : shown(speaker, evidence);
