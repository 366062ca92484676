/** A text that the page holds, in pieces: an engine takes the square of an element's length to read it. */
export const kept = (id: string): string =>
  Array.from(document.querySelectorAll(`script[data-of="${id}"]`), ({ textContent }) => textContent ?? '').join('');

export const keptBytes = (id: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(kept(id)), (sign) => sign.charCodeAt(0));
