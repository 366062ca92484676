import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import type { Block, Report } from '../../src/model/report.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';
import { sampleReport, strip } from './sample.ts';

const template = await ownTemplate();

/** A day strip as the pages make it: with its ends, its hours and a row an hour. */
const day = (n: number, note = 'food 40 g'): Block => ({
  kind: 'chart',
  drawing: {
    ...strip(n),
    day: { name: `Day ${n}`, left: 62, right: 480, hours: ['0:00', '12:00', '24:00'] },
    table: {
      columns: ['Hour', 'Lowest', 'Noted'],
      rows: [0, 1, 2].map((hour) => [`${hour}:00`, `${90 + hour}`, note]),
    },
  },
});
const report = (over: Partial<Report> = {}): Report => {
  const sample = sampleReport(over);
  if (over.pages) return sample;
  const days: Block[] = [{ kind: 'heading', level: 1, text: 'Days' }, day(1), { kind: 'pageBreak' }, day(2)];
  const short = (block: Block): Block => (block.kind === 'table' ? { ...block, rows: block.rows.slice(0, 5) } : block);
  const pages = [sample.pages[0]!, sample.pages[2]!, { id: 'strips', title: 'Days', blocks: days }];
  return { ...sample, pages: pages.map((page) => ({ ...page, blocks: page.blocks.map(short) })) };
};
const html = webPage(report(), template);
const { document } = new JSDOM(html).window;
const all = (what: string, within: ParentNode = document): Element[] => [...within.querySelectorAll(what)];

test('the same report gives the same page', () => {
  expect(webPage(report(), template)).toBe(html);
  expect(webPage(report(), JSON.parse(JSON.stringify(template)))).toBe(html);
});

test('names its language, direction and title', () => {
  const page = new JSDOM(
    webPage(report({ language: 'ar', direction: 'rtl', title: 'T & <b>', tab: 'Q & <i>' }), template),
  ).window.document;
  expect(page.documentElement.lang).toBe('ar');
  expect(page.documentElement.dir).toBe('rtl');
  expect(page.title).toBe('Q & <i>');
  expect(page.querySelector('h1')?.textContent).toBe('T & <b>');
});

test('has one top heading and leaves no level out', () => {
  const levels = all('h1,h2,h3,h4,h5,h6').map(({ tagName }) => Number(tagName[1]));
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
  expect(levels[0]).toBe(1);
  expect(levels.filter((level, i) => i > 0 && level > levels[i - 1]! + 1)).toEqual([]);
});

test('what stands between two rows goes over all columns and names no row', () => {
  const across = all('td.across');
  expect(across.length).toBeGreaterThan(0);
  for (const cell of across) {
    const table = cell.closest('table')!;
    expect(Number(cell.getAttribute('colspan'))).toBe(all('thead th', table).length);
    expect(cell.parentElement!.children).toHaveLength(1);
  }
});

test('has landmarks and a skip link that leads into the report', () => {
  for (const landmark of ['header', 'nav', 'main', 'footer']) expect(all(landmark), landmark).toHaveLength(1);
  const skip = all('a')[0]!;
  expect(all(skip.getAttribute('href')!)[0]?.tagName).toBe('MAIN');
  const links = all('nav a').map((link) => link.getAttribute('href')!);
  expect(links.map((link) => all(link)[0]?.tagName)).toEqual(report().pages.map(() => 'SECTION'));
});

test('every id is there once, and whatever is pointed to is there', () => {
  const ids = all('[id]').map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const named = all('[aria-labelledby]').flatMap((el) => el.getAttribute('aria-labelledby')!.split(' '));
  const clipped = all('[clip-path]').map((el) => /url\(#(.+)\)/.exec(el.getAttribute('clip-path')!)![1]!);
  expect([...named, ...clipped].filter((id) => !ids.includes(id))).toEqual([]);
});

test('every picture has a name or is only for the eye', () => {
  for (const svg of all('svg')) {
    if (svg.getAttribute('aria-hidden') === 'true') continue;
    expect(svg.getAttribute('role')).toBe('img');
    expect(document.getElementById(svg.getAttribute('aria-labelledby')!)?.textContent).not.toBe('');
  }
  const drawings = report().pages.flatMap(({ blocks }) =>
    blocks.flatMap((b) => (b.kind === 'chart' ? [b.drawing] : [])),
  );
  const names = all('svg title').map((title) => title.textContent);
  expect(names).toEqual(expect.arrayContaining(drawings.map(({ summary }) => summary)));
});

test('the numbers of a drawing follow it as a table', () => {
  const figure = all('figure.strip')[0]!;
  expect(all('details th[scope=col]', figure).map((cell) => cell.textContent)).toEqual(['Hour', 'Lowest', 'Noted']);
  expect(all('details tbody tr', figure)).toHaveLength(3);
});

test('every table has a caption and says what its heads stand for', () => {
  for (const table of all('table')) {
    expect(table.querySelector('caption')?.textContent).not.toBe('');
    expect(all('th:not([scope])', table)).toEqual([]);
    expect(all('thead th', table).length).toBeGreaterThan(0);
  }
});

test('boxes are real and labelled; write-in lines have their label before them', () => {
  for (const box of all('input[type=checkbox]')) expect(box.closest('label')?.textContent).not.toBe('');
  expect(all('.write-in .line')).toHaveLength(2);
  expect(all('.write-in .label')[0]?.textContent).toBe('Other');
});

test('what needs the script is hidden without it', () => {
  expect(all('.chooser:not([hidden])')).toEqual([]);
  expect(all('input[type=range]:not([hidden])')).toEqual([]);
  expect(all('.strip[hidden]')).toEqual([]);
});

const sha256 = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

test('the policy comes before all else, allows this style and this script by hash, and nothing more', () => {
  const policy = all('meta[http-equiv="Content-Security-Policy"]');
  expect(policy).toHaveLength(1);
  expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf('<style'));
  expect(all('style')).toHaveLength(1);
  expect(all('script')).toHaveLength(1);
  expect(policy[0]!.getAttribute('content')!.split('; ')).toEqual([
    "default-src 'none'",
    `style-src ${sha256(all('style')[0]!.textContent!)}`,
    `script-src ${sha256(all('script')[0]!.textContent!)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ]);
});

/** Elements and attributes that make a browser fetch, send, or run something. */
const REACHING =
  'iframe,object,embed,link,base,form,img,audio,video,source,[src],[srcset],[action],[style],[background]';

function harmless(page: Document): void {
  expect(all(REACHING, page)).toEqual([]);
  for (const element of all('*', page)) {
    for (const { name, value } of element.attributes) {
      expect(name.startsWith('on'), `${element.tagName} ${name}`).toBe(false);
      if (name.endsWith('href')) expect(value).toMatch(/^#/);
    }
  }
  expect(all('style', page)[0]!.textContent).not.toMatch(/url\(|@import/);
}

test('nothing in it reaches outside', () => harmless(document));

/** Every text of a value that a person or a file may have written replaced by one text. */
function withText<T>(value: T, text: string, key = ''): T {
  const fixed = ['kind', 'style', 'align', 'role', 'band', 'on', 'outline', 'anchor', 'shape', 'voice', 'paper'];
  if (typeof value === 'string')
    return ([...fixed, 'language', 'direction', 'printed', 'id'].includes(key) ? value : text) as T;
  if (Array.isArray(value)) return value.map((one: unknown) => withText(one, text, key)) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, withText(inner, text, name)])) as T;
}

/** Tags and attribute names, without any text. */
const shape = (page: Document): string[] =>
  all('*', page).map((element) => [element.tagName, ...[...element.attributes].map(({ name }) => name)].join(' '));

const PLAIN = shape(new JSDOM(webPage(withText(report(), 'plain'), template)).window.document);

test.each([
  ['markup', '<script>alert(1)</script><img src=x onerror=alert(1)>'],
  ['the end of every element', '</title></style></script></p></svg></table></main></body></html>'],
  ['attributes', '" onmouseover="alert(1)" x=\' autofocus onfocus=\'alert(1)'],
  ['names of the template', '{{pages}} {{title}} {{style}} }}{{'],
  ['a style sheet', '"}body{background:url(https://example.org/x)}/*\\'],
  ['controls and NUL', 'a\u0000b\u001b[31mc\u0085d'],
  ['comments and data', '<!--> <![CDATA[ ]]> -->'],
  ['direction marks', 'x \u202egnol\u202c y'],
  ['halves of surrogate pairs', '\ud800 a \udc00'],
  ['an address', 'https://example.org/?q=1 javascript:alert(1)'],
])('%s in every text stays text', (_, text) => {
  const page = new JSDOM(webPage(withText(report(), text), template)).window.document;
  expect(shape(page)).toEqual(PLAIN);
  harmless(page);
  const shown = text.replace(/[\p{Cc}\u202a-\u202e]/gu, '').replace(/\p{Cs}/gu, '\ufffd');
  expect(page.title).toBe(shown.trim().replace(/\s+/g, ' '));
  expect(page.querySelector('p.lead')?.textContent).toBe(shown);
  expect(page.querySelector('td')?.textContent).toContain(shown);
});

test('any text at all stays text', () => {
  const small = (text: string): Document => {
    const one = withText(report({ pages: [{ id: 'a', title: '', blocks: [day(1)] }] }), text);
    return new JSDOM(webPage(one, template)).window.document;
  };
  const plain = shape(small('plain'));
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...'<>&"\'/!-={} a\0') })),
      (text) => {
        expect(shape(small(`x${text}`))).toEqual(plain);
      },
    ),
    { numRuns: 25 },
  );
});

test('every printed sheet says whose it is; a name cannot leave its string', () => {
  const footer = { left: 'x', right: 'page {page} of {pages}' };
  const page = webPage(report({ header: { left: 'A"}\\', right: 'b' }, footer, paper: 'letter' }), template);
  expect(page).toContain('@page{size:letter;@top-left{content:"A\\22 \\7d \\5c "}');
  expect(page).toContain('content:"page " counter(page) " of " counter(pages) ""');
});

test('black ink only leaves no colour in a drawing', () => {
  const page = new JSDOM(webPage(report(), template, { grey: true })).window.document;
  const inks = all('svg *', page).flatMap((el) => [el.getAttribute('fill'), el.getAttribute('stroke')]);
  const coloured = inks.filter((ink) => ink?.startsWith('#') && new Set(ink.slice(1).match(/../g)).size > 1);
  expect(coloured).toEqual([]);
});

test.each([
  ['P-7/P-7-clinic-report.pdf', './P-7/P-7-clinic-report.pdf'],
  ['é 1/a?b#c.pdf', './%C3%A9%201/a%3Fb%23c.pdf'],
  ['../../etc/passwd', './etc/passwd'],
  ['javascript:alert(1)', './javascript%3Aalert(1)'],
  ['//example.org/x', './example.org/x'],
])('a file beside the page, %s, is a path from here and nothing else', (path, href) => {
  const columns = [{ title: 'Code', align: 'start' as const, width: 1 }];
  const block: Block = {
    kind: 'table',
    caption: 'All',
    captionShown: false,
    columns,
    rows: [[{ text: 'P-7', link: path }]],
  };
  const page = webPage(report({ pages: [{ id: 'a', title: '', blocks: [block] }] }), template);
  expect([...page.matchAll(/<a href="(\.[^"]*)">P-7<\/a>/g)].map(([, to]) => to)).toEqual([href]);
});
