import type { Drawing } from './drawing.ts';
import type { Band } from './targets.ts';

/** A cell of a table: text, and how it stands out. `band` draws a small labelled swatch before the text. */
export interface Cell {
  text: string;
  /** Before the text, strong, on a line of its own. */
  first?: string;
  strong?: boolean;
  muted?: boolean;
  band?: Band;
  /** Under the text, at its own size. */
  picture?: Drawing;
  /** A file that lies beside this one or below, with `/`: where there are links, the text leads to it. */
  link?: string;
  /** The only cell of its row, over the whole width: what stands between two rows. */
  across?: boolean;
}

export type Block =
  | { kind: 'heading'; level: 1 | 2 | 3; text: string }
  | { kind: 'paragraph'; text: string; style: 'lead' | 'body' | 'strong' | 'small' }
  /** `pairs`: two items side by side where the medium is wide enough, read row by row. */
  | { kind: 'list'; items: string[]; ordered: boolean; dense?: boolean; pairs?: boolean }
  | {
      kind: 'table';
      caption: string;
      /** Shown above the table when true; else only for screen readers. */
      captionShown: boolean;
      /** `width` is a share of the table's width; shares sum to 1. */
      columns: { title: string; align: 'start' | 'end'; width: number }[];
      rows: Cell[][];
      dense?: boolean;
      /** Lets a reader at a screen sort the rows: a key for each cell of `rows`, numbers by size, nothing last. */
      keys?: (string | number)[][];
      /** Lets a reader find rows of a long one: by the value of a column, one a row, of those in `order`; or by what is typed. */
      find?: { column: number; values?: string[]; order?: string[] }[];
    }
  /** `dense`: close to its neighbours, as one of many. */
  | { kind: 'chart'; title?: string; drawing: Drawing; dense?: boolean }
  /** Tick boxes to fill in by hand; `inline` sets them side by side, for short items such as 0 to 10. */
  | { kind: 'boxes'; items: string[]; inline?: boolean }
  /** Room for handwriting, below what was typed in already; `inline`: one line, which begins where the label ends. Without a label under its heading. */
  | { kind: 'writeIn'; label?: string; lines: number; text?: string; inline?: boolean }
  | { kind: 'caution'; id: string; text: string; boxed: boolean }
  /** Side by side; `widths` are shares that sum to 1. */
  | { kind: 'columns'; widths: number[]; columns: Block[][] }
  /** Blocks inside an ink outline (1 pt, 9 pt padding): the one thing a page wants seen. Never split. */
  | { kind: 'panel'; blocks: Block[] }
  /** Never split over a page break. */
  | { kind: 'together'; blocks: Block[] }
  /**
   * One of several forms, the fullest first. A page that holds any stands on one side: those with the smallest `gives` give way
   * first, and each keeps the fullest form for which there is room. `goes`, where its last form (of two and more) is a loss: that
   * one is taken in a later turn, of this number. Stands at the top of a page only, in no other block, and holds no heading of
   * level 1. A form is told when it is tried: most never are.
   */
  | { kind: 'fit'; gives: number; goes?: number; forms: Form[] }
  | { kind: 'space'; points: number }
  | { kind: 'pageBreak' };

/** The same blocks each time. */
export type Form = () => Block[];

/** Blocks of one kind. */
export type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

/** One page (it may run on to further sheets). Starts at the top of a sheet. */
export interface Page {
  id: string;
  /** Bookmark text. */
  title: string;
  blocks: Block[];
}

export interface Report {
  language: string;
  direction: 'ltr' | 'rtl';
  paper: 'a4' | 'letter';
  voice: 'clinic' | 'patient';
  /** Large print: nothing under 16 points. */
  large?: boolean;
  /** What it is; holds no name. */
  title: string;
  /** Whose it is, of which days, and what it is: what a window, a list of files and a screen reader call it. The code, where there is one. */
  tab: string;
  /** Standing lines of every sheet. `{page}` and `{pages}` are filled by the writer. */
  header: { left: string; right: string };
  footer: { left: string; right: string };
  pages: Page[];
  /** Date of printing, YYYY-MM-DD: the document's only date. */
  printed: string;
}
