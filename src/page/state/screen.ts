import type { DayShown, Framed, Sheet } from '../messages.ts';

/** What shows the state; the desk never touches an element. */
export interface Screen {
  /** Everything, for a new step. */
  draw(): void;
  /** What stands around the paper; the controls stay as they are, and the focus with them. */
  drawAround(): void;
  /** What moved in the run over a folder; the rest stays, and the focus with it. */
  drawRun(): void;
  /** The fields of the visit, with the focus where it was; or only whether a file holds them. */
  drawVisit(): void;
  /** All days of the files, to choose from. */
  drawStrip(): void;
  drawKept(): void;
  /** Letters that no face has; a file that cannot help. */
  drawFaces(lacking: readonly string[], wrong: string): void;
  /** What came of saving into a folder. */
  saved(text: string): void;
  /** Whether files are read again. */
  busy(on: boolean): void;
  /** Whether a paper is on its way. */
  coming(on: boolean): void;
  paper(sheet: Sheet, paper: Framed, faces: readonly FontFace[]): Promise<void>;
  /** A day large, over the papers. */
  day(day: DayShown, faces: readonly FontFace[]): Promise<void>;
}
