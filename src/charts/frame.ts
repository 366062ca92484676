/**
 * The room blocks and charts may fill on a sheet, in points. One layout serves A4 and US Letter: the box fits the
 * smaller of the two in each direction, with margins of at least 15 mm and a binding edge of 20 mm.
 */
export const CONTENT_WIDTH = 482;

/** What is left between the header's rule and the footer. */
export const CONTENT_HEIGHT = 648;
