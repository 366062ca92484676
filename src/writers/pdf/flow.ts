import type { Sheet } from './sheet.ts';

/** A band of a page that is never cut: one line of a paragraph, one row of a table, one chart. Points. */
export interface Strip {
  height: number;
  /** Space above it; dropped at the top of a sheet. */
  gap: number;
  /** Stays on the sheet of the strip after it. */
  keep: boolean;
  draw(sheet: Sheet, x: number, y: number): void;
  /** Repeated above this strip when it comes first on a sheet (the head of a table). */
  running?: Strip;
  /** Starts a new sheet. */
  breakBefore?: boolean;
}

/** A block as strips, with the space it wants around it. Between two blocks the larger of the two wishes holds. */
export interface Flow {
  strips: Strip[];
  before: number;
  after: number;
}

export const flow = (strips: Strip[], before: number, after: number): Flow => ({ strips, before, after });

/** Binds strips to one another, so that they are not parted unless they outgrow a sheet. */
export function together(strips: readonly Strip[]): Strip[] {
  return strips.map((strip, i) => (i < strips.length - 1 && !strip.keep ? { ...strip, keep: true } : strip));
}

/** Binds strips to one another and to what comes after them: titles never end a sheet. */
export const leading = (strips: readonly Strip[]): Strip[] => strips.map((strip) => ({ ...strip, keep: true }));

export interface Placed {
  strip: Strip;
  sheet: number;
  /** From the top of the content box. */
  y: number;
}

/** Blocks one after another as one list of strips. */
export function chain(flows: readonly Flow[]): Flow {
  const strips: Strip[] = [];
  let after = 0;
  let before = 0;
  for (const flow of flows) {
    const [first, ...rest] = flow.strips;
    if (!first) continue;
    if (strips.length === 0) before = flow.before;
    const gap = strips.length === 0 ? first.gap : first.gap + Math.max(after, flow.before);
    strips.push({ ...first, gap });
    for (const strip of rest) strips.push(strip);
    after = flow.after;
  }
  return { strips, before, after };
}

/** Height of strips set one under another without a page break. */
export function heightOf(strips: readonly Strip[]): number {
  let height = 0;
  strips.forEach((strip, i) => {
    height += strip.height + (i === 0 ? 0 : strip.gap);
  });
  return height;
}

/** Draws strips one under another. */
export function drawStack(strips: readonly Strip[], sheet: Sheet, x: number, y: number): void {
  let at = y;
  strips.forEach((strip, i) => {
    if (i > 0) at += strip.gap;
    strip.draw(sheet, x, at);
    at += strip.height;
  });
}

/**
 * Puts strips on sheets of `capacity` points, first sheet 0. Strips bound by `keep` move to the next sheet together
 * when they fit one sheet; a longer run is set strip by strip.
 */
export function place(strips: readonly Strip[], capacity: number): { placed: Placed[]; sheets: number } {
  const placed: Placed[] = [];
  let sheet = 0;
  let y = 0;
  let empty = true;

  const put = (strip: Strip): void => {
    if (empty && strip.running) {
      placed.push({ strip: strip.running, sheet, y });
      y += strip.running.height;
    } else if (!empty) y += strip.gap;
    placed.push({ strip, sheet, y });
    y += strip.height;
    empty = false;
  };
  const turn = (): void => {
    if (empty) return;
    sheet++;
    y = 0;
    empty = true;
  };

  for (let from = 0; from < strips.length; ) {
    let to = from + 1;
    while (to < strips.length && strips[to - 1]!.keep && !strips[to]!.breakBefore) to++;
    const run = strips.slice(from, to);
    if (run[0]!.breakBefore) turn();
    const height = heightOf(run);
    // Half a hundredth of a point is rounding, not overflow.
    const fits = (needed: number): boolean => y + needed <= capacity + 0.005;
    if (!fits(height + (empty ? 0 : run[0]!.gap)) && height + (run[0]!.running?.height ?? 0) <= capacity) turn();
    for (const strip of run) {
      if (!empty && !fits(strip.gap + strip.height)) turn();
      put(strip);
    }
    from = to;
  }
  return { placed, sheets: sheet + 1 };
}

/** Shares of the wished space between strips that are tried; a page whose blocks may give way is set no closer than so. */
const TIGHTER = [0.9, 0.8, 0.7, 0.6, 0.5];
export const TIGHTEST = 0.7;
/** A last sheet less full than this looks like a remainder. */
const REMAINDER = 0.3;

interface Layout {
  placed: Placed[];
  sheets: number;
}

/**
 * Places strips, and sets them a little tighter where that spares a sheet: a few lines are not left alone on a last one.
 * Where that spares none, the last two sheets share what they hold.
 */
export function copyfit(strips: readonly Strip[], capacity: number): Layout {
  let best = place(strips, capacity);
  if (best.sheets === 1) return best;
  let set = strips;
  for (const share of TIGHTER) {
    const tighter = strips.map((strip) => ({ ...strip, gap: strip.gap * share }));
    const layout = place(tighter, capacity);
    if (layout.sheets >= best.sheets) continue;
    best = layout;
    set = tighter;
  }
  return balanced(set, capacity, best);
}

/** The last sheet begins as late as leaves no remainder on it, between two blocks rather than inside a table. */
function balanced(strips: readonly Strip[], capacity: number, layout: Layout): Layout {
  const last = layout.sheets - 1;
  if (last === 0 || filled(layout, last) >= REMAINDER * capacity) return layout;
  let cut: Layout | null = null;
  for (let from = strips.indexOf(firstOn(layout, last)) - 1; from > 0; from--) {
    const strip = strips[from]!;
    if (strips[from - 1]!.keep) continue;
    const tried = place(strips.with(from, { ...strip, breakBefore: true }), capacity);
    if (tried.sheets > layout.sheets || filled(tried, last - 1) < REMAINDER * capacity) break;
    if (filled(tried, last) < REMAINDER * capacity) continue;
    if (!strip.running) return tried;
    cut ??= tried;
  }
  return cut ?? layout;
}

/** How far down a sheet is filled, in points. */
const filled = ({ placed }: Layout, sheet: number): number =>
  placed.reduce((foot, it) => (it.sheet === sheet ? Math.max(foot, it.y + it.strip.height) : foot), 0);

/** The first strip of a sheet that is not repeated there. */
function firstOn({ placed }: Layout, sheet: number): Strip {
  const [first, second] = placed.filter((it) => it.sheet === sheet);
  return first!.strip === second?.strip.running ? second.strip : first!.strip;
}
