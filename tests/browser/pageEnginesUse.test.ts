import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect } from 'vitest';
import { home } from '../support/story.ts';
import type { Handled } from './driven.ts';
import { inEngines, once, openExampleIn, openIn, SETTLED } from './engines.ts';
import { alone, COLLECT, onSides, type Printed, pdfPages, SIDES } from './printing.ts';
import { remarked } from './remarked.ts';

/** Where something in a frame stands, in pixels of the window, brought into view. Gives its middle. */
const middleIn = (frame: string, what: string): string => `(() => {
  const frame = document.querySelector(${JSON.stringify(frame)});
  const found = [...frame.contentDocument.querySelectorAll(${JSON.stringify(what)})].find((one) => one.getClientRects().length > 0);
  found.scrollIntoView({ block: 'center' });
  const [around, box] = [frame.getBoundingClientRect(), found.getClientRects()[0]];
  return [around.left + box.left + box.width / 2, around.top + box.top + box.height / 2, box.width];
})()`;

const PAPER = '#paper iframe.paper:not(.coming)';
const DAY = 'dialog[open] iframe.paper:not(.coming)';
const SLIDER = '.plot input[type=range]';

/** What a curve says of the place that is looked at: to the eye, and to a reader by ear. */
const said = (frame: string): string => `((doc) => {
  const slider = [...doc.querySelectorAll('${SLIDER}')].find((one) => one.getClientRects().length > 0);
  return { seen: slider.closest('figure').querySelector('.readout').textContent, heard: slider.getAttribute('aria-valuetext') };
})(document.querySelector('${frame}').contentDocument)`;
interface Said {
  seen: string;
  heard: string;
}

/** Puts the focus where a person's Tab would bring it; drivers differ in which elements their Tab stops at. */
const focusIn = (frame: string, what: string): string => `(() => {
  const { contentWindow, contentDocument } = document.querySelector('${frame}');
  contentWindow.focus();
  [...contentDocument.querySelectorAll('${what}')].find((one) => one.getClientRects().length > 0).focus();
})()`;

/** From the middle of a curve, as a share of its width: within a stretch of time, whichever length it has, and not between two. */
const OFF = 0.2525;

/** Where something stands once it stands still: a day grows to its room, and a bar beside it comes and goes. */
async function atRest(engine: Handled, where: string): Promise<[number, number, number]> {
  for (let before = ''; ; await new Promise((done) => setTimeout(done, 100))) {
    const found = (await engine.evaluate(where)) as [number, number, number];
    if (JSON.stringify(found) === before) return found;
    before = JSON.stringify(found);
  }
}

/** Reads a curve off with a mouse, with a finger and with the keys. */
async function readOff(engine: Handled, frame: string): Promise<void> {
  const ask = async (): Promise<Said> => (await engine.evaluate(said(frame))) as Said;
  const found: string[] = [];
  for (const kind of ['mouse', 'touch'] as const) {
    const [x, y, width] = await atRest(engine, middleIn(frame, SLIDER));
    await engine.point(kind, [x - width * OFF, y], [x + width * OFF, y]);
    const { seen, heard } = await ask();
    expect(heard, kind).toMatch(/\d/);
    expect(kind === 'touch' || seen === heard, kind).toBe(true);
    found.push(heard);
  }
  expect(found[1]).toBe(found[0]);
  await engine.evaluate(focusIn(frame, SLIDER));
  await engine.press('End');
  const last = await ask();
  await engine.press('ArrowLeft');
  const before = await ask();
  expect(before.seen).toBe(before.heard);
  expect(before.heard).not.toBe(last.heard);
}

inEngines('what is done on the page', (check) => {
  check('curves are read off; a date leads to its day, large, and back', async (engine) => {
    await openExampleIn(engine, 'visit');
    await readOff(engine, PAPER);
    const [x, y] = (await engine.evaluate(middleIn(PAPER, 'main p a.day, main li a.day'))) as [number, number];
    await engine.clickAt(x, y);
    await engine.evaluate(once(`document.querySelector('${DAY}')`));
    const name = `document.querySelector('#day-name').textContent`;
    const first = await engine.evaluate(name);
    expect(await engine.evaluate('document.activeElement.id')).toBe('day-name');
    await readOff(engine, DAY);
    await engine.evaluate(`document.querySelector('[data-go=after]').focus()`);
    await engine.press('Enter');
    await engine.evaluate(once(`document.querySelector('${DAY}') && ${name} !== ${JSON.stringify(first)}`));
    expect(await engine.evaluate('document.activeElement.dataset.go')).toBe('after');
    await engine.evaluate(once(`document.querySelectorAll('dialog iframe').length === 1`));
    await engine.evaluate(focusIn(DAY, SLIDER));
    await engine.press('Escape');
    await engine.evaluate(once(`!document.querySelector('dialog[open]')`));
    const back = `document.querySelector('${PAPER}').contentDocument.activeElement.matches('a.day')`;
    await engine.evaluate(once(`document.activeElement.matches('${PAPER}') && ${back}`));
  });

  check('exactly the sheets that are ticked are printed, each on its sides', async (engine) => {
    const scratch = mkdtempSync(join(tmpdir(), 'daybands-print-'));
    writeFileSync(join(scratch, 'days.csv'), remarked());
    await openIn(engine, 'visit');
    await engine.evaluate(COLLECT);
    await engine.setFiles('#bring input[type=file]', [join(scratch, 'days.csv')]);
    await engine.evaluate(once(SETTLED));
    const print = async (...titles: string[]): Promise<Printed[]> => {
      await engine.evaluate('window.printed = []');
      await engine.click('[data-save=print]');
      await engine.evaluate(once(`window.printed.length === ${titles.length}`));
      await engine.evaluate(once(SETTLED));
      const printed = (await engine.evaluate('window.printed')) as Printed[];
      expect(printed.map(({ title }) => title)).toEqual(titles);
      return printed;
    };
    const tick = (name: string): Promise<unknown> =>
      engine.evaluate(
        `[...document.querySelectorAll('#saving fieldset label')].find((one) => one.textContent.startsWith(${JSON.stringify(name)})).querySelector('input').click()`,
      );
    const [CLINIC, PERSON, FURTHER] = ['Report for the care team', 'Sheet for the person', 'Further pages'];
    const REMARKS = 'More remarks, whole';
    const both = await print(CLINIC, PERSON);
    expect(both[0]!.html).toContain(REMARKS);
    await tick('Sheet of remarks');
    expect((await print(CLINIC, PERSON))[0]!.html).not.toContain(REMARKS);
    await tick(CLINIC);
    await tick(FURTHER);
    await print(PERSON, FURTHER);
    // As PDF where the driver prints; else by the layout of its sheets.
    const path = join(scratch, 'sheet.html');
    writeFileSync(path, engine.pdf ? alone(both[1]!) : onSides(both[1]!));
    await engine.goto(pathToFileURL(path).href);
    if (engine.pdf) expect(await pdfPages(await engine.pdf())).toHaveLength(2);
    else expect(await engine.evaluate(SIDES)).toEqual([1, 1]);
    rmSync(scratch, { recursive: true });
  });

  check('words of a visit stand on the paper, and are taken back step by step', async (engine) => {
    await openExampleIn(engine, 'visit');
    const value = (name: string): string => `document.querySelector('#visit [data-field=${name}]').value`;
    const write = async (name: string, text: string): Promise<void> => {
      await engine.evaluate(`document.querySelector('#visit [data-field=${name}]').focus()`);
      await engine.type(text);
      await engine.press('Tab');
    };
    await write('goal', 'walks');
    await write('helper', 'a friend');
    const shows = (text: string): string =>
      `document.querySelectorAll('#paper iframe').length === 1 && document.querySelector('#paper iframe').contentDocument.body.textContent.includes('${text}')`;
    await engine.evaluate(once(shows('walks')));
    await engine.click('[data-field=undo]');
    expect(await engine.evaluate(`[${value('goal')}, ${value('helper')}]`)).toEqual(['walks', '']);
    await engine.click('[data-field=undo]');
    expect(await engine.evaluate(`[${value('goal')}, ${value('helper')}]`)).toEqual(['', '']);
    expect(await engine.evaluate(`document.querySelector('[data-field=undo]').disabled`)).toBe(true);
    await engine.evaluate(once(`!(${shows('walks')})`));
  });

  check('a file without a unit is asked about, and read once it was answered', async (engine) => {
    await openIn(engine, 'own');
    await engine.setFiles('#bring input[type=file]', [join(home, 'sample-data/hostile/no-unit-could-be-either.csv')]);
    await engine.evaluate(once(SETTLED));
    expect(await engine.evaluate(`document.activeElement.matches('#asked h2')`)).toBe(true);
    expect(await engine.evaluate(`document.querySelectorAll('#asked :checked').length`)).toBe(0);
    // Neither a key nor the button alone takes an answer.
    await engine.evaluate(`document.querySelector('#asked input').focus()`);
    await engine.press('Enter');
    const go = '#asked .roads button';
    await engine.click(go);
    await engine.evaluate(once(`document.querySelector('.wanted').textContent`));
    await engine.click('#asked .reading input[value="mmol/L"]');
    await engine.click(go);
    await engine.evaluate(once(`document.querySelector('#asked [data-field=series] .reading input')`));
    await engine.click('#asked [data-field=series] .reading input');
    await engine.click(go);
    await engine.evaluate(once(`document.querySelector('${PAPER}')`));
    expect(await engine.evaluate(`document.querySelector('${PAPER}').contentDocument.body.textContent`)).toMatch(
      /mmol\/L/,
    );
  });
});
