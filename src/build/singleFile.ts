import { base64, sha256 } from '../bytes/hash.ts';

/** One HTML file that opens from a disk and reaches nothing: code, style and data stand in it. */
interface SingleFile {
  title: string;
  style: string;
  body: string;
  /** Runs in the page, by its hash. */
  script: string;
  /** Texts by id that no engine runs; also the code of the worker. */
  data: Record<string, string>;
}

export function singleFile({ title, style, body, script, data }: SingleFile): string {
  const kept = Object.entries(data).flatMap(([id, text]) =>
    pieces(harmless(text, 'script')).map((piece) => `<script type="text/plain" data-of="${id}">${piece}</script>`),
  );
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<meta charset="utf-8">',
    // Before anything that could run: a policy counts only from where it stands.
    `<meta http-equiv="content-security-policy" content="${policyFor(script, style)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    // Without one, engines ask for /favicon.ico where there is a server.
    '<link rel="icon" href="data:,">',
    `<title>${title}</title>`,
    `<style>${harmless(style, 'style')}</style>`,
    `<body>${body}`,
    ...kept,
    // Last, so that all of the above is there when it runs.
    `<script>${harmless(script, 'script')}</script>`,
    '</html>',
    '',
  ].join('\n');
}

/** WebKit takes the square of an element's length to read it: 10 s for 20 MB in one piece, a quarter of a second in twenty. */
const PIECE = 1_000_000;

function pieces(text: string): string[] {
  const all: string[] = [];
  for (let from = 0; from === 0 || from < text.length; from += PIECE) all.push(text.slice(from, from + PIECE));
  return all;
}

/** What the page may do. Its worker takes the policy over, so that nothing the analysis holds can be sent. */
const policyFor = (script: string, style: string): string =>
  [
    "default-src 'none'",
    `script-src ${hashed(script)}`,
    `style-src ${hashed(style)}`,
    'img-src data:',
    'worker-src blob:',
    "connect-src 'none'",
    "object-src 'none'",
    "form-action 'none'",
    "base-uri 'none'",
    // Text of files can become neither markup nor a script, whatever a later change of the page does.
    "require-trusted-types-for 'script'",
    'trusted-types daybands paper',
  ].join('; ');

const hashed = (text: string): string => `'sha256-${base64(sha256(text))}'`;

/** What would end an element early, begin a comment in it or be changed before it is hashed is a fault of the build, found here. */
function harmless(text: string, element: string): string {
  if (new RegExp(`</${element}`, 'i').test(text)) throw new Error(`A ${element} holds its own end tag.`);
  if (text.includes('<!--')) throw new Error(`A ${element} holds "<!--", which changes where it ends.`);
  if (/[\0\uFEFF\r]/.test(text)) throw new Error(`A ${element} holds a sign that engines change before they hash.`);
  return text;
}
