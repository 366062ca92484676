/**
 * The room blocks and charts may fill on a sheet, in points. One layout serves A4 and US Letter: the box fits the
 * smaller of the two in each direction, with margins of at least 15 mm and a binding edge of 20 mm.
 */
export const CONTENT_WIDTH = 482;

/** What a phone 390 pixels wide shows with letters of 12 pixels and more where they are 8.5 points. */
export const NARROW_WIDTH = 240;

/** Whether a chart is asked for as a phone shows it, and how wide it is. */
export const narrowOr = (width = CONTENT_WIDTH): { narrow: boolean; whole: number } => ({
  narrow: width < CONTENT_WIDTH,
  whole: width,
});

/** What is left between the header's rule and the footer. */
export const CONTENT_HEIGHT = 648;
