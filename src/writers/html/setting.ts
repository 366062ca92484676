import type { Speaker } from '../../language/index.ts';
import { outline } from '../outline.ts';
import { OWN_IDS } from './checks.ts';
import type { DayNames } from './dayLinks.ts';

/** What the blocks of one page share while they are written. */
export interface Setting {
  say: Speaker['say'];
  grey: boolean;
  /** How deep a heading of this level lies in the document; asked in order of reading. */
  depth(level: number): number;
  /** Whether this is asked of it for the first time. */
  first(what: string): boolean;
  /** A new id: `r-<stem>-<n>`. */
  id(stem: string): string;
  /** A class that sets these shares, where there is room for them; shares are used in print and on wide screens only. */
  shares(of: 'grid' | 'column', shares: readonly number[]): string;
  /** Where days can be shown large: how texts name them. */
  days: DayNames | undefined;
  /** The heading last written: what a chart or a group of boxes without a title of its own is about. */
  topic: string;
}

/** Rules made for one report, as the policy allows no style attributes. */
export interface OwnStyle {
  shares: Setting['shares'];
  rules(): string;
}

/** A column of less than this share, percent, holds a heading of one word, which is never broken. */
const NARROW = 15;
const WORD = '6rem';

export function ownStyle(): OwnStyle {
  const rules = new Map<string, string>();
  const whole = (share: number): number => Math.max(1, Math.round(share * 100));
  return {
    shares(of, shares) {
      const numbers = shares.map(whole);
      const name = `${of}-${numbers.join('-')}`;
      rules.set(
        name,
        of === 'grid'
          ? `.${name}{grid-template-columns:${numbers.map((n) => `minmax(${n < NARROW ? WORD : 0},${n}fr)`).join(' ')}}`
          : `.${name}{width:${numbers[0]}%}`,
      );
      return name;
    },
    rules: () => (rules.size === 0 ? '' : `@media print,(min-width:48rem){${[...rules.values()].join('')}}\n`),
  };
}

export function ids(): Setting['id'] {
  const used = new Map<string, number>();
  return (stem) => {
    const next = (used.get(stem) ?? 0) + 1;
    used.set(stem, next);
    return `${OWN_IDS}${stem}-${next}`;
  };
}

/** The document's title is its one top heading, so a page's own headings lie one level lower. */
export function depths(): Setting['depth'] {
  const depth = outline([0]);
  return (level) => depth(level);
}

/** True once for each text. */
export function firstOf(): Setting['first'] {
  const seen = new Set<string>();
  return (what) => !seen.has(what) && seen.add(what) !== undefined;
}
