import type { Issue, IssueCode } from '../../model/issues.ts';
import { CONTENT_SLOTS, type Part, TEXT_SLOTS, type TemplateNode } from './template.ts';

/** Where each node stood in its file. */
export type Lines = Map<TemplateNode, number>;

type Tree = Extract<TemplateNode, { tag: string }>;

const ELEMENTS = new Set(
  `html head title meta body header footer main nav section article aside div p span strong em small address ul ol li
   a br hr h1 h2 h3 h4 h5 h6`.split(/\s+/),
);
const ATTRIBUTES = /^(id|class|lang|dir|title|role|tabindex|hidden|href|name|content|charset|aria-[a-z]+)$/;
/** Where content may stand. */
const ROOMY = new Set(['div', 'main', 'section', 'nav', 'article', 'aside', 'body', 'header', 'footer']);
/** Ids the writer makes begin so. */
export const OWN_IDS = 'r-';

/** Everything wrong with a template's tree, in order of the file. */
type WithOther = 'template-headings' | 'template-name' | 'template-place';
type Alone = Exclude<Extract<IssueCode, `template-${string}`>, WithOther>;

export function checkTree(root: Tree, lines: Lines): Issue[] {
  const issues: Issue[] = [];
  const ids = new Set<string>();
  const targets: [Tree, string][] = [];
  const filled: string[] = [];
  let depth = 0;
  let pagesInMain = false;
  const put = (
    node: TemplateNode,
    problem: { code: Alone; actual: string } | { code: WithOther; actual: string; expected: string },
  ) =>
    issues.push({
      level: 'refusal',
      origin: { file: 'page.html', line: lines.get(node) ?? 1 },
      ...problem,
      actual: problem.actual.slice(0, 120),
    });
  const tell = (node: TemplateNode, code: Alone, actual: string) => put(node, { code, actual });
  const tellBeside = (node: TemplateNode, code: WithOther, actual: string, expected: string) =>
    put(node, { code, actual, expected });

  const names = (node: TemplateNode, texts: readonly Part[], allowed: readonly string[]) => {
    for (const part of texts) {
      if (typeof part === 'string') {
        if (/\{\{|\}\}/.test(part)) tellBeside(node, 'template-name', part.trim(), allowed.join(', '));
      } else if (allowed.includes(part.fill)) filled.push(part.fill);
      else tellBeside(node, 'template-name', part.fill, allowed.join(', '));
    }
  };

  const attribute = (node: Tree, name: string, value: readonly Part[]) => {
    const text = plain(value);
    const misplaced = node.tag !== 'meta' && /^(name|content|charset)$/.test(name);
    if (!ATTRIBUTES.test(name) || misplaced) tell(node, 'template-attribute', `${node.tag} ${name}`);
    else if (name === 'href' && !/^#[\w-]+$/.test(text)) tell(node, 'template-address', text);
    else if (name === 'href') targets.push([node, text.slice(1)]);
    if (name === 'id') {
      if (ids.has(text) || text.startsWith(OWN_IDS)) tell(node, 'template-id', text);
      ids.add(text);
    }
    names(node, value, TEXT_SLOTS);
  };

  const visit = (node: TemplateNode, above: readonly string[]) => {
    if ('text' in node) {
      const content = node.text.some((part) => typeof part !== 'string' && isContent(part.fill));
      const roomy = ROOMY.has(above.at(-1) ?? '');
      names(node, node.text, content && roomy ? [...TEXT_SLOTS, ...CONTENT_SLOTS] : TEXT_SLOTS);
      if (node.text.some((part) => typeof part !== 'string' && part.fill === 'pages') && above.includes('main'))
        pagesInMain = depth === 1;
      return;
    }
    if (!ELEMENTS.has(node.tag)) return void tell(node, 'template-element', node.tag);
    const heading = /^h([1-6])$/.exec(node.tag);
    if (heading) {
      const level = Number(heading[1]);
      if (level > depth + 1 || (level === 1 && depth > 0))
        tellBeside(node, 'template-headings', node.tag, depth ? `h2 – h${depth + 1}` : 'h1');
      depth = level;
    }
    for (const [name, value] of Object.entries(node.attributes)) attribute(node, name, value);
    for (const child of node.children) visit(child, [...above, node.tag]);
  };

  visit(root, []);
  for (const [node, id] of targets) if (!ids.has(id)) tell(node, 'template-address', `#${id}`);
  for (const name of ['language', 'title', 'pages'])
    if (!filled.includes(name)) tell(root, 'template-missing', `{{${name}}}`);
  if (filled.filter((name) => name === 'pages').length > 1) tell(root, 'template-missing', '{{pages}}');
  else if (filled.includes('pages') && !pagesInMain) tellBeside(root, 'template-place', '{{pages}}', '<main>, <h1>');
  return issues;
}

/** A style sheet reaches nothing outside the page and cannot end its own element. */
export function checkStyle(css: string): Issue[] {
  return css.split('\n').flatMap((line, i): Issue[] => {
    const found = /@import|url\s*\(|image-set\s*\(|<\/?\s*style|<!--|\\/i.exec(line);
    return found
      ? [
          {
            code: 'template-style',
            level: 'refusal',
            origin: { file: 'page.css', line: i + 1 },
            actual: found[0],
          },
        ]
      : [];
  });
}

const isContent = (name: string): boolean => (CONTENT_SLOTS as readonly string[]).includes(name);
const plain = (value: readonly Part[]): string =>
  value.map((part) => (typeof part === 'string' ? part : `{{${part.fill}}}`)).join('');
