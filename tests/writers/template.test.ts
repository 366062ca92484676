import { expect, test } from 'vitest';
import { compileTemplate, openTemplate } from '../../src/cli/compileTemplate.ts';
import type { CompiledTemplate } from '../../src/writers/html/index.ts';
import { ownTemplate, sources } from '../support/webPage.ts';

const body = (inside: string): string =>
  `<!doctype html><html lang="{{language}}"><head><title>{{title}}</title></head><body>${inside}</body></html>`;
const MAIN = '<main id="a"><h1>{{title}}</h1>{{pages}}</main>';

/** What is told about a template with this body, or with this style sheet. */
async function faults(html: string, css = ''): Promise<string[]> {
  const compiled = await compileTemplate({ html, css });
  return compiled.ok ? [] : compiled.issues.map(({ code, origin }) => `${code} ${origin?.line}`);
}

test('the template of the project has no fault and is plain JSON', async () => {
  const template = await ownTemplate();
  expect(JSON.parse(JSON.stringify(template))).toEqual(template);
});

test.each<[string, string, string[]]>([
  ['a small one', MAIN, []],
  ['a clinic of its own', `<header><p>Harbour Lane clinic (invented)</p></header>${MAIN}`, []],
  ['a comment', `<!-- {{anything}} <script> -->${MAIN}`, []],
  ['an unknown name', `${MAIN}\n<p>{{name}}</p>`, ['template-name 2']],
  ['a name of an object member', `${MAIN}<p>{{constructor}}</p>`, ['template-name 1']],
  ['half a name', `${MAIN}<p>{{title</p>`, ['template-name 1']],
  ['content in an attribute', `${MAIN}<p title="{{pages}}"></p>`, ['template-name 1']],
  ['content in a paragraph', `${MAIN}<p>{{contents}}</p>`, ['template-name 1']],
  ['a script', `${MAIN}\n\n<script>1</script>`, ['template-element 3']],
  ['a style', `${MAIN}<style>p{}</style>`, ['template-element 1']],
  ['a picture from elsewhere', `${MAIN}<img src="https://example.org/a.png">`, ['template-element 1']],
  ['a frame', `${MAIN}<iframe src="x"></iframe>`, ['template-element 1']],
  ['a form', `${MAIN}<form action="x"></form>`, ['template-element 1']],
  ['a foreign element', `${MAIN}<svg><a href="#a"></a></svg>`, ['template-element 1']],
  ['an event', `${MAIN}<p onclick="x()"></p>`, ['template-attribute 1']],
  ['a style attribute', `${MAIN}<p style="color:red"></p>`, ['template-attribute 1']],
  ['an address', `${MAIN}<a href="https://example.org">x</a>`, ['template-address 1']],
  ['code as an address', `${MAIN}<a href="javascript:alert(1)">x</a>`, ['template-address 1']],
  ['an address to be filled in', `${MAIN}<a href="#{{title}}">x</a>`, ['template-address 1']],
  ['a link to nowhere', `${MAIN}<a href="#b">x</a>`, ['template-address 1']],
  ['an id twice', `${MAIN}<p id="a"></p>`, ['template-id 1']],
  ['an id of the program', `${MAIN}<p id="r-page-1"></p>`, ['template-id 1']],
  ['a level left out', '<main><h1>{{title}}</h1>{{pages}}<h3>x</h3></main>', ['template-headings 1']],
  ['a second top heading', `${MAIN}<h1>x</h1>`, ['template-headings 1']],
  ['no top heading', '<main>{{title}}{{pages}}</main>', ['template-place 1']],
  ['the report outside its part', '<h1>{{title}}</h1><div>{{pages}}</div>', ['template-place 1']],
  ['no report', '<main><h1>{{title}}</h1></main>', ['template-missing 1']],
  ['the report twice', `<main><h1>{{title}}</h1>{{pages}}{{pages}}</main>`, ['template-missing 1']],
])('%s', async (_, inside, expected) => {
  expect(await faults(body(inside))).toEqual(expected);
});

test.each([
  ['an import', 'p{}\n@import "x.css";', ['template-style 2']],
  ['an address', 'p{background:url(https://example.org)}', ['template-style 1']],
  ['a disguised address', 'p{background:u\\72l(x)}', ['template-style 1']],
  ['its own end', '</style><script>', ['template-style 1']],
  ['nothing of the kind', 'p{color:#1a1a1a}', []],
])('a style sheet with %s', async (_, css, expected) => {
  expect(await faults(body(MAIN), css)).toEqual(expected);
});

test('a policy or refresh of its own is refused', async () => {
  const html = body(MAIN).replace('<title>', '<meta http-equiv="refresh" content="0;url=x"><title>');
  expect(await faults(html)).toEqual(['template-attribute 1']);
});

test('the template compiled at build time is used as long as its sources are the same', async () => {
  const kept: CompiledTemplate = { ...(await ownTemplate()), style: 'kept' };
  expect(await openTemplate(sources, kept)).toEqual({ ok: true, template: kept });
  const changed = { ...sources, css: `${sources.css}\np{}` };
  expect(await openTemplate(changed, kept)).toMatchObject({ ok: true, template: { style: changed.css } });
  expect(await openTemplate(sources, undefined)).toMatchObject({ ok: true, template: { style: sources.css } });
});
