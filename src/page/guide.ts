import type { HowToRead } from '../model/drawing.ts';
import type { Below } from '../model/words.ts';

/** Whose guide it is: that of whoever has the days, or that of whoever leads a visit. Named as the voices of the papers are. */
export type Guide = 'patient' | 'clinic';

/** A picture of the papers of the invented fortnight: which it is, what it shows in words, how it is read, and itself as SVG. */
export interface GuidePicture {
  how: HowToRead;
  shows: string;
  read: string;
  svg: string;
}

interface Part {
  name: string;
  /** By how they are read; from the paper that the guide is about. */
  pictures?: readonly HowToRead[];
  /** Locked texts that stand here too. */
  cautions?: readonly Below<'cautions'>[];
  /** Here too stands what the page is not. */
  not?: true;
}

/** The parts of each guide in their order; the texts are words `screen.guide`, and docs/ has the same. */
export const GUIDES: Record<Guide, readonly Part[]> = {
  patient: [
    { name: 'what' },
    { name: 'files' },
    { name: 'bring' },
    { name: 'answer' },
    { name: 'sheet', pictures: ['hourBlocks', 'nights', 'modalDay'] },
    { name: 'fits' },
    { name: 'save' },
    { name: 'visit' },
    { name: 'unwell', cautions: ['C3', 'C5', 'C6'] },
    { name: 'limits', cautions: ['C2', 'C4'], not: true },
  ],
  clinic: [
    { name: 'before' },
    { name: 'bring' },
    { name: 'answer' },
    { name: 'read', pictures: ['evenings', 'nightBars', 'hoursBar'] },
    { name: 'visit' },
    { name: 'save' },
    { name: 'many' },
    { name: 'odd' },
    { name: 'limits', cautions: ['clinicMethod'], not: true },
  ],
};
