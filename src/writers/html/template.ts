import { fingerprint } from '../../bytes/hash.ts';
import type { Issue } from '../../model/input.ts';

/** Texts a template may ask for with `{{name}}`, in text and in attributes. */
export const TEXT_SLOTS = [
  'language',
  'direction',
  'voice',
  'title',
  'tab',
  'headerLeft',
  'headerRight',
  'footerLeft',
  'skip',
] as const;

/** Content a template may ask for; such a name stands alone in its element. */
export const CONTENT_SLOTS = ['contents', 'pages'] as const;

export type TextSlot = (typeof TEXT_SLOTS)[number];
export type ContentSlot = (typeof CONTENT_SLOTS)[number];

/** A text of a template: as written, with names to be filled in between. */
export type Part = string | { fill: string };

export type TemplateNode =
  | { text: Part[] }
  | { tag: string; attributes: Record<string, Part[]>; children: TemplateNode[] };

/** `templates/page.html` and `templates/page.css`, checked and taken apart. Plain JSON. */
export interface CompiledTemplate {
  /** Of both sources. */
  hash: string;
  /** The html element. */
  root: Extract<TemplateNode, { tag: string }>;
  style: string;
}

export interface TemplateSources {
  html: string;
  css: string;
}

export type TemplateResult = { ok: true; template: CompiledTemplate } | { ok: false; issues: Issue[] };

export const templateHash = ({ html, css }: TemplateSources): string => fingerprint(JSON.stringify([html, css]));

/** The template that was compiled when the program was built, when it was made from the very same sources. */
export function keptTemplate(sources: TemplateSources, kept: unknown): CompiledTemplate | undefined {
  const template = kept as CompiledTemplate | undefined;
  return template?.hash === templateHash(sources) ? template : undefined;
}
