/** Signs that steer a line or its direction do their work wherever a text is pasted: a visit file takes none. */
const STEERING = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** In a visit file: longest code, clinic or change, and longest name of a note, in units of UTF-16. */
export const LONGEST = { line: 80, note: 120 } as const;

/** A text as a visit file takes it, on one line: without such signs, and at most so many units of UTF-16. */
export const plainLine = (text: string, most: number): string =>
  text
    .replace(/[\t\n\r\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(STEERING, '')
    .slice(0, most)
    // Half of a sign that was cut through.
    .replace(STEERING, '')
    .trim();
