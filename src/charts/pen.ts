import { area, line } from 'd3-shape';

/**
 * A path context for d3-shape that gathers plain numbers. Writers put numbers on paper faster than they could
 * parse a path string, and a Drawing stays free of any medium's syntax.
 */
interface Pen {
  /** One entry a stroke: x0,y0,x1,y1… rounded to 0.01 point. */
  lines: number[][];
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
  /** d3-shape draws a lone point as a tiny circle; a reading between two gaps becomes a short dash instead. */
  arc(x: number, y: number): void;
}

export const round = (value: number): number => Math.round(value * 100) / 100;

function pen(): Pen {
  const lines: number[][] = [];
  let current: number[] = [];
  return {
    lines,
    moveTo(x, y) {
      current = [round(x), round(y)];
      lines.push(current);
    },
    lineTo(x, y) {
      current.push(round(x), round(y));
    },
    closePath() {
      if (current.length === 2) current.push(round(current[0]! + 0.6), current[1]!);
    },
    arc(x, y) {
      current = [round(x - 0.6), round(y), round(x + 0.6), round(y)];
      lines.push(current);
    },
  };
}

/** A point of a curve; `null` where there is none. */
export type Point = readonly [x: number, y: number] | null;
/** Where a ribbon begins and ends above one x. */
export type Slice = readonly [x: number, foot: number, top: number] | null;

// One of each for all charts: the engine puts the functions of each new one among old objects, where they would hold what a chart is drawn of.
const [drawnLine, drawnArea] = [line<Point>(), area<Slice>()];
drawnLine
  .defined((point) => point !== null)
  .x((point) => point![0])
  .y((point) => point![1]);
drawnArea
  .defined((slice) => slice !== null)
  .x((slice) => slice![0])
  .y0((slice) => slice![1])
  .y1((slice) => slice![2]);

/** Lines through points, one entry a line without a break. */
export function linesThrough(points: Point[]): number[][] {
  const ink = pen();
  drawnLine.context(ink as never)(points);
  return ink.lines;
}

/** Outlines of a ribbon, one entry a part without a break. */
export function ringsAround(slices: Slice[]): number[][] {
  const ink = pen();
  drawnArea.context(ink as never)(slices);
  return ink.lines;
}

/** A closed line around a box, for a frame without a fill. */
export function frame(x: number, y: number, w: number, h: number): number[] {
  return [x, y, x + w, y, x + w, y + h, x, y + h, x, y].map(round);
}
