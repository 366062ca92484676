import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { grade, sentences, words } from '../support/readability.ts';
import { passages } from '../support/running.ts';
import { contar, faltas, frases, inflesz, palabras } from '../support/spanish.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { faults } from '../support/wordLists.ts';

interface Tongue {
  language: string;
  faults(text: string, voice: 'clinic' | 'patient'): string[];
  sentences(text: string): string[];
  words(text: string): string[];
  /** Whether a text reads as easily as asked, and how easily in numbers. Texts under 30 words jump about. */
  easy(text: string, of: 'paper' | 'passage' | 'report'): [boolean, number];
}

/**
 * Gates: English by grade (communication rule, ours: 6 for the paper, 7 for a passage, 10 for the clinic). Spanish on the
 * INFLESZ scale (from memory): "very easy" for the paper, "rather easy" for a passage and for the clinic.
 */
const TONGUES: Tongue[] = [
  {
    language: 'en',
    faults,
    sentences,
    words,
    easy: (text, of) => [grade(text) <= { paper: 6, passage: 7, report: 10 }[of], grade(text)],
  },
  {
    language: 'es',
    faults: faltas,
    sentences: frases,
    words: palabras,
    easy: (text, of) => {
      const ease = inflesz(contar(text));
      return [ease >= { paper: 80, passage: 65, report: 65 }[of], ease];
    },
  },
];

/** Voice P: 20 words a sentence at most. */
const LONGEST = 20;

/** What a person wrote stands as it was written, and is no sentence of ours. */
const withoutOwnWords = (text: string): string => text.replace(/[^.?!\n]*: [“«][^”»]*[”»]\./gu, '');

describe.each(stories)('%s', (story) => {
  describe.each(TONGUES)('in $language', ({ language, faults, sentences, words, easy }) => {
    const book = wordsOf(language) as { cautions: object };
    const locked = new Set(everyMessage({ cautions: book.cautions }).map(([, text]) => text));

    test('the patient paper is easy to read and keeps the rules of speaking', async () => {
      const report = compose(await analysisOf(story), book, { voice: 'patient', paper: 'a4', whole: wordsOf() });
      const all = passages(report, locked).map(({ title, text }) => ({ title, text: withoutOwnWords(text) }));
      expect(
        all.flatMap(({ title, text }) => [
          ...faults(title, 'patient'),
          ...text.split('\n').flatMap((one) => faults(one, 'patient')),
        ]),
      ).toEqual([]);
      expect(all.flatMap(({ text }) => sentences(text)).filter((one) => words(one).length > LONGEST)).toEqual([]);
      expect(all.filter(({ text }) => words(text).length >= 30 && !easy(text, 'passage')[0])).toEqual([]);
      const whole = all.map(({ title, text }) => `${title}\n${text}`).join('\n');
      expect(easy(whole, 'paper')[0], `ease ${easy(whole, 'paper')[1]}`).toBe(true);
    });

    test('the clinic report too', async () => {
      const analysis = await analysisOf(story);
      const report = compose(analysis, book, { voice: 'clinic', paper: 'a4', whole: wordsOf() });
      // A person's own words are nobody's to mend.
      const own = analysis.timeline.notes.flatMap(({ text }) => (text ? [`: ${text}`] : []));
      // What was left out speaks of files, and has its own words and causes.
      const all = passages({ ...report, pages: report.pages.filter(({ id }) => id !== 'left-out') }, locked);
      expect(
        all.flatMap(({ text }) =>
          text
            .split('\n')
            .filter((one) => !own.some((remark) => one.endsWith(remark)))
            .flatMap((one) => faults(one, 'clinic').map((fault) => `${fault} in "${one}"`)),
        ),
      ).toEqual([]);
      const whole = all.map(({ title, text }) => `${title}\n${text}`).join('\n');
      expect(easy(whole, 'report')[0], `ease ${easy(whole, 'report')[1]}`).toBe(true);
    });
  });
});
