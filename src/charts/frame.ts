/**
 * The box every sheet fills, in points. It lies inside the smaller of A4 and US Letter with margins of 15 mm or
 * more (20 mm at the sides, for the punch), so both papers break at the same places.
 */
export const CONTENT_WIDTH = 482;

/** Height left for blocks between the header line and the footer. */
export const CONTENT_HEIGHT = 640;
