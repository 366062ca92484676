import type { Browser, Page } from 'playwright-core';
import { type OpenedPage, openPage, savedBy, until } from './pageOpened.ts';

/**
 * What a test does to the workers of a page, from outside: `held` turns are not begun until they are let go, at a `crash` the engine ends the worker, as where
 * it runs out of memory. By what the person's results are called; `read` is whoever is opened.
 */
const BETWEEN = `
  window.held = [];
  window.crash = [];
  window.waiting = [];
  const Real = Worker;
  window.Worker = class extends Real {
    postMessage(message, give) {
      const stem = message.job === 'turn' ? message.given.wish.person.stem : message.job;
      if (window.held.includes(stem)) return void window.waiting.push(() => super.postMessage(message, give));
      if (window.crash.includes(stem)) return void this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
      super.postMessage(message, give);
    }
  };`;

/** The page, with what a test does to its workers. */
export async function openFolderPage(
  browser: Browser,
  options: Parameters<typeof openPage>[1] = {},
): Promise<OpenedPage> {
  return openPage(browser, options, BETWEEN);
}

export const chooseFolder = async (page: Page, folder: string, most?: number): Promise<void> => {
  await page.setInputFiles('input[type=file][webkitdirectory]', folder);
  await until(page, `document.querySelector('[data-do=begin]')`, most);
};

/** Until nobody is worked on. */
export const rested = (page: Page, most?: number): Promise<void> =>
  until(page, `document.querySelector('.worklist tbody tr') && !document.querySelector('#who progress')`, most);

export const listed = async (page: Page): Promise<string> =>
  Buffer.from((await savedBy(page, 'worklist.csv')).bytes).toString('utf8');

/** A folder to save into that a test can look into, in place of one that somebody chooses in a dialog of the engine. */
export const FOLDER = `(() => {
  window.written = {};
  const at = (path) => ({
    async *keys() { yield* Object.keys(window.written); },
    getDirectoryHandle: async (name) => at(path + name + '/'),
    getFileHandle: async (name) => ({
      createWritable: async () => {
        let size = 0;
        return { write: async (bytes) => { size += bytes.length; }, close: async () => { window.written[path + name] = size; } };
      },
    }),
  });
  window.showDirectoryPicker = async () => at('');
})()`;
