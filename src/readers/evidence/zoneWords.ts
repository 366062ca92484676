import { asciiDigits } from '../table/numbers.ts';

/** `UTC+2`, `GMT-05:00`, `(+02:00)`, `UTC`: minutes from world time named in a header or a line; undefined when none is. */
export function offsetNamed(text: string): number | undefined {
  const plainText = asciiDigits(text)
    .replaceAll('_', ' ')
    .replace(/([a-z])(UTC|GMT)\b/g, '$1 $2')
    .replace(/\b(utc|gmt)\s+(plus|minus)\b/i, (_, zone: string, word: string) => zone + (/^p/i.test(word) ? '+' : '-'));
  const found = /(?:\b(?:utc|gmt)\s*([+-])\s*|(?:^|[\s(:,])([+-]))(\d{1,2})(?:[:.h]?([0-5]\d))?(?![\d/-])/i.exec(
    plainText,
  );
  if (found) {
    const minutes = Number(found[3]) * 60 + Number(found[4] ?? 0);
    // A sign without UTC before it must look like an offset: two digits and a colon.
    if (minutes > 900 || (found[2] && !/[+-]\d\d:[0-5]\d/.test(found[0]))) return undefined;
    return (found[1] ?? found[2]) === '-' ? -minutes : minutes;
  }
  return /\(z\)|\b(?:utc|gmt|zulu|coordinated universal|universal time|world time|weltzeit)\b/i.test(plainText)
    ? 0
    : undefined;
}
