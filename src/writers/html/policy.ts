import { base64, sha256 } from '../../bytes/hash.ts';
import { el, type Html } from './element.ts';

const hash = (text: string): string => `'sha256-${base64(sha256(text))}'`;

/**
 * What the browser may do for this page: apply this one style sheet, run this one script, and nothing else. It cannot
 * fetch, send, embed or be based elsewhere, whatever a text in it says.
 */
export function policy(style: string, script: string): Html {
  const rules = [
    "default-src 'none'",
    `style-src ${hash(style)}`,
    `script-src ${hash(script)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ];
  return el('meta', { 'http-equiv': 'Content-Security-Policy', content: rules.join('; ') });
}
