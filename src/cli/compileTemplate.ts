import type { Lines, Part, TemplateNode, TemplateResult, TemplateSources } from '../writers/html/index.ts';

/** The template as `kept` when the program was built, where its sources are the same; else it is compiled now. */
export async function openTemplate(sources: TemplateSources, kept: unknown): Promise<TemplateResult> {
  const { keptTemplate } = await import('../writers/html/index.ts');
  const template = keptTemplate(sources, kept);
  return template ? { ok: true, template } : compileTemplate(sources);
}

/**
 * Takes a template apart and checks it: known names only, headings in order, no script, no address outside the page,
 * no event attribute. Resolves with every fault and its line rather than with the first. The one place where jsdom is
 * loaded (0.8 s), hence the import inside: a bundler would lift one at the top of the file to the start of the program.
 */
export async function compileTemplate(sources: TemplateSources): Promise<TemplateResult> {
  const { checkStyle, checkTree, templateHash } = await import('../writers/html/index.ts');
  const { JSDOM } = await import('jsdom');
  // No scripts and no resources: both are off unless asked for.
  const page = new JSDOM(sources.html, { includeNodeLocations: true });
  const lines: Lines = new Map();
  const ELEMENT = 1;
  const TEXT = 3;

  const take = (node: ChildNode | HTMLElement): TemplateNode[] => {
    const line = page.nodeLocation(node)?.startLine ?? 1;
    if (node.nodeType === TEXT) {
      const text = { text: parts(node.textContent ?? '') };
      lines.set(text, line);
      return [text];
    }
    // Comments are for whoever edits the template.
    if (node.nodeType !== ELEMENT) return [];
    const element = node as HTMLElement;
    const taken = {
      tag: element.tagName.toLowerCase(),
      attributes: Object.fromEntries([...element.attributes].map(({ name, value }) => [name, parts(value)])),
      children: [...element.childNodes].flatMap(take),
    };
    lines.set(taken, line);
    return [taken];
  };

  const root = take(page.window.document.documentElement)[0] as Extract<TemplateNode, { tag: string }>;
  page.window.close();
  const issues = [...checkTree(root, lines), ...checkStyle(sources.css)];
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, template: { hash: templateHash(sources), root, style: sources.css } };
}

/** `Hello {{name}}` as `Hello ` and the name to fill in. */
function parts(text: string): Part[] {
  return text
    .split(/(\{\{.*?\}\})/s)
    .map((part) => (part.startsWith('{{') && part.endsWith('}}') ? { fill: part.slice(2, -2).trim() } : part))
    .filter((part) => part !== '');
}
