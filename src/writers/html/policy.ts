import { createHash } from 'node:crypto';
import { el, type Html } from './element.ts';

const hash = (text: string): string => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`;

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
