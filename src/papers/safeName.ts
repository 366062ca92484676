import { bytesOf } from '../bytes/text.ts';

/** Names that Windows keeps for devices; a file with one cannot be copied there. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
/** Most codes: a pattern of all scripts takes the engine longer to make than all else that is done to a name. */
const ASCII = /^[\0-\x7f]*$/;
const MOST_CHARACTERS = 60;
/** Room for the longest ending, in bytes, under the usual limit of 255 for a file name. */
const MOST_BYTES = 180;

/**
 * A file name any system and mail program can carry: letters, marks and digits of any script, everything else a hyphen.
 * Path signs, control and direction characters never get through. Falls back to `daybands`.
 */
export function safeName(text: string): string {
  let name = text
    .normalize('NFC')
    .replace(ASCII.test(text) ? /[^A-Za-z0-9]+/g : /[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  name = [...name].slice(0, MOST_CHARACTERS).join('');
  while (bytesOf(name).length > MOST_BYTES) name = [...name].slice(0, -1).join('');
  name = name.replace(/-+$/, '');
  // A mark needs a letter to stand on.
  name = name.replace(/^[\p{M}-]+/u, '');
  if (name === '') return 'daybands';
  return DEVICES.test(name) ? `${name}-1` : name;
}

/**
 * What one person's results are called by: the code, else the name of what the files came as (a folder, or the first file).
 * Never the person's name: file names travel. Names without their ending.
 */
export const stemOf = (code: string | undefined, cameAs: string, firstFile: string): string =>
  safeName(code ?? (cameAs || firstFile));
