import { type Attributes, el, type Html } from './element.ts';
import type { CompiledTemplate, ContentSlot, Part, TemplateNode, TextSlot } from './template.ts';

export interface Filling {
  texts: Record<TextSlot, string>;
  contents: Record<ContentSlot, readonly Html[]>;
  /** Put first in the head and last in the body, whatever the template says: what keeps the page safe is not its choice. */
  headFirst: readonly Html[];
  bodyLast: readonly Html[];
}

/** A template with its names filled in. What is filled in is never looked through for names again. */
export function fillTemplate(template: CompiledTemplate, filling: Filling): Html {
  const { texts, contents } = filling;
  const text = (part: Part): string => (typeof part === 'string' ? part : (texts[part.fill as TextSlot] ?? ''));

  const fill = (node: TemplateNode): Html[] => {
    if ('text' in node) {
      return node.text.flatMap((part): readonly Html[] =>
        typeof part !== 'string' && Object.hasOwn(contents, part.fill)
          ? contents[part.fill as ContentSlot]
          : [text(part)],
      );
    }
    const attributes: Attributes = {};
    for (const [name, value] of Object.entries(node.attributes)) attributes[name] = value.map(text).join('');
    const children = node.children.flatMap(fill);
    if (node.tag === 'head') return [el('head', attributes, ...filling.headFirst, ...children)];
    if (node.tag === 'body') return [el('body', attributes, ...children, ...filling.bodyLast)];
    return [el(node.tag, attributes, ...children)];
  };
  return fill(template.root)[0]!;
}
