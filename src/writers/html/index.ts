import { speakerOf } from '../../language/index.ts';
import type { Report } from '../../model/report.ts';
import { targetSets } from '../../targets/index.ts';
import { blocksHtml } from './blocks.ts';
import { contents as contentsOf } from './contents.ts';
import { type DayNames, withDayLinks } from './dayLinks.ts';
import { drawn, el, print } from './element.ts';
import { fillTemplate } from './fill.ts';
import { isLong } from './finder.ts';
import { FINDER_SCRIPT } from './finderScript.ts';
import { policy } from './policy.ts';
import { SCRIPT } from './script.ts';
import { depths, firstOf, ids, ownStyle, type Setting } from './setting.ts';
import { onScreen, sheetRules } from './sheets.ts';
import type { CompiledTemplate } from './template.ts';

export { checkStyle, checkTree, type Lines } from './checks.ts';
export {
  type CompiledTemplate,
  keptTemplate,
  type Part,
  type TemplateNode,
  type TemplateResult,
  type TemplateSources,
  templateHash,
} from './template.ts';

export interface HtmlOptions {
  /** Parsed words file of the report's language, for the few words only a screen needs. */
  words: unknown;
  /** Black ink only, bands told apart by hatch. */
  grey?: boolean;
  /** How texts name the days that whoever shows the page can show large: each leads there. Absent: none can. */
  days?: DayNames;
}

/** Markup of a report for a frame that runs no script, and its looks, which whoever owns the frame gives it. */
export interface FramedReport {
  html: string;
  style: string;
}

/**
 * A report as one web page: one file that needs no network, can be read without its script, and prints. Every text of
 * the report stays text. Same report, template and words, same file.
 */
export function writeHtml(report: Report, template: CompiledTemplate, options: HtmlOptions): string {
  const { filling, style } = filled(report, template, options);
  const blocks = report.pages.flatMap((page) => page.blocks);
  const script = blocks.some((block) => block.kind === 'table' && isLong(block)) ? FINDER_SCRIPT + SCRIPT : SCRIPT;
  const headFirst = [
    el('meta', { charset: 'utf-8' }),
    policy(style, script),
    el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    el('style', {}, drawn(style)),
  ];
  const page = fillTemplate(template, { ...filling, headFirst, bodyLast: [el('script', {}, drawn(script))] });
  return `<!doctype html>\n${print(page)}\n`;
}

/** The same for a frame of a page that has a policy of its own. */
export function framedHtml(report: Report, template: CompiledTemplate, options: HtmlOptions): FramedReport {
  const { filling, style } = filled(report, template, options);
  const page = fillTemplate(template, { ...filling, headFirst: [el('meta', { charset: 'utf-8' })], bodyLast: [] });
  return { html: `<!doctype html>\n${print(page)}\n`, style };
}

function filled(report: Report, template: CompiledTemplate, { words, grey = false, days }: HtmlOptions) {
  // Its words hold no glucose: unit and targets are never asked for.
  const { say } = speakerOf(words, { unit: 'mg/dL', voice: report.voice, targets: targetSets.adult });
  const own = ownStyle();
  const setting: Setting = {
    say,
    grey,
    depth: depths(),
    first: firstOf(),
    id: ids(),
    shares: own.shares,
    days,
    topic: report.title,
  };
  const pageIds = report.pages.map(() => setting.id('page'));
  const pages = report.pages.map((page, i) => {
    const blocks = blocksHtml(page.blocks, setting);
    const linked = days === undefined ? blocks : withDayLinks(blocks, days);
    return el('section', { class: 'page', id: pageIds[i]!, 'aria-label': page.title }, ...linked);
  });
  const texts = {
    language: report.language,
    direction: report.direction,
    voice: report.large ? `${report.voice} large` : report.voice,
    tab: report.tab,
    title: report.title,
    headerLeft: onScreen(report.header.left),
    headerRight: onScreen(report.header.right),
    footerLeft: onScreen(report.footer.left),
    skip: say('web.skip'),
  };
  const contents = { contents: contentsOf(report.pages, pageIds, say), pages };
  return { filling: { texts, contents }, style: `${template.style}\n${own.rules()}${sheetRules(report)}` };
}
