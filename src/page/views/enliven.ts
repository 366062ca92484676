/**
 * What makes a paper answer: curves are read point by point with pointer or keys, days can be hidden, tables can be sorted. It is the script of
 * the papers' web pages (writers/html/script.ts), as a frame runs none of its own: the build puts it here.
 */
export const enliven: (document: Document, addEventListener: Window['addEventListener']) => void = () => {};
