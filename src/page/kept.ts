/** A text that the page holds, in pieces: an engine takes the square of an element's length to read it. */
export const kept = (id: string): string =>
  Array.from(document.querySelectorAll(`script[data-of="${id}"]`), ({ textContent }) => textContent ?? '').join('');

export function keptBytes(id: string): Uint8Array<ArrayBuffer> {
  const signs = atob(kept(id));
  const bytes = new Uint8Array(signs.length);
  for (let i = 0; i < signs.length; i++) bytes[i] = signs.charCodeAt(i);
  return bytes;
}
