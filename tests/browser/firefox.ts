import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { type Handled, keyActions, pointerActions, programOf, typeActions, within } from './driven.ts';

export const firefoxProgram = (): string | undefined => programOf(['firefox-esr', 'firefox']);

type Answer = Record<string, unknown>;

/** Debian's Firefox as it is, over WebDriver BiDi: JSON over one socket, so that the socket is all it needs. */
export async function openFirefox(downloads = tmpdir()): Promise<Handled> {
  const profile = mkdtempSync(join(tmpdir(), 'firefox-'));
  writeFileSync(join(profile, 'user.js'), preferences(downloads));
  const child = spawn(
    firefoxProgram()!,
    ['--headless', '--no-remote', '--profile', profile, '--remote-debugging-port', '0'],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const listening = new Promise<string>((done, fail) => {
    child.once('error', fail);
    child.once('exit', () => fail(new Error('Firefox ended before it listened.')));
    child.stderr.on('data', (data) => {
      const found = /WebDriver BiDi listening on (ws:\S+)/.exec(String(data));
      if (found) done(found[1]!);
    });
  });
  const { send, socket } = await connected(`${await within(60_000, 'Starting Firefox', listening)}/session`);
  const { capabilities } = (await send('session.new', { capabilities: {} })) as {
    capabilities: { browserVersion: string };
  };
  const { context } = (await send('browsingContext.create', { type: 'tab' })) as { context: string };
  const run = async (expression: string): Promise<{ value?: unknown; sharedId?: string }> => {
    const answer = (await send('script.evaluate', {
      ...{ expression, target: { context }, awaitPromise: true, userActivation: false },
    })) as { type: string; exceptionDetails?: { text: string }; result: { value?: unknown; sharedId?: string } };
    if (answer.type === 'exception') throw new Error(answer.exceptionDetails?.text);
    return answer.result;
  };
  const element = async (selector: string): Promise<{ sharedId: string }> => {
    const { sharedId } = await run(`document.querySelector(${JSON.stringify(selector)})`);
    if (!sharedId) throw new Error(`Nothing is found by ${selector}.`);
    return { sharedId };
  };
  const act = async (actions: object[]): Promise<void> =>
    void (await send('input.performActions', { context, actions }));
  return {
    name: 'firefox',
    version: capabilities.browserVersion,
    goto: (url) => send('browsingContext.navigate', { context, url, wait: 'complete' }),
    async evaluate(expression) {
      // As text, so that numbers, lists and absence come back as they were.
      const { value } = await run(`(async () => JSON.stringify(await (${expression})))()`);
      return typeof value === 'string' ? JSON.parse(value) : undefined;
    },
    async setFiles(selector, files) {
      await send('input.setFiles', { context, element: await element(selector), files });
    },
    async click(selector) {
      // It presses places of the window, and nothing outside it.
      await run(`document.querySelector(${JSON.stringify(selector)}).scrollIntoView({ block: 'center' })`);
      const origin = { type: 'element', element: await element(selector) };
      const actions = [
        { type: 'pointerMove', x: 0, y: 0, origin },
        { type: 'pointerDown', button: 0 },
        { type: 'pointerUp', button: 0 },
      ];
      await send('input.performActions', { context, actions: [{ type: 'pointer', id: 'mouse', actions }] });
    },
    press: (...keys) => act(keyActions(keys)),
    type: (text) => act(typeActions([...text])),
    point: (kind, ...places) => act(pointerActions(kind, places, kind === 'touch')),
    clickAt: (x, y) => act(pointerActions('mouse', [[x, y]], true)),
    async screenshot(path) {
      const { data } = (await send('browsingContext.captureScreenshot', { context })) as { data: string };
      writeFileSync(path, Buffer.from(data, 'base64'));
    },
    async pdf() {
      const { data } = (await send('browsingContext.print', { context, background: true })) as { data: string };
      return Buffer.from(data, 'base64');
    },
    async close() {
      const ended = new Promise((done) => child.once('exit', done));
      send('browser.close', {}).catch(() => {});
      await Promise.race([ended, new Promise((done) => setTimeout(done, 5000))]);
      child.kill('SIGKILL');
      socket.terminate();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

async function connected(address: string) {
  const socket = new WebSocket(address, { perMessageDeflate: false, maxPayload: 2 ** 30 });
  await new Promise((done, fail) => socket.once('open', done).once('error', fail));
  const waiting = new Map<number, { done(result: Answer): void; fail(error: Error): void }>();
  let last = 0;
  socket.on('message', (data) => {
    const { id, type, result, error, message } = JSON.parse(String(data));
    const { done, fail } = waiting.get(id) ?? {};
    waiting.delete(id);
    if (type === 'error') fail?.(new Error(`${error}: ${message}`));
    else done?.(result);
  });
  socket.on('close', () => {
    for (const { fail } of waiting.values()) fail(new Error('The connection was closed.'));
  });
  const send = (method: string, params: Answer): Promise<Answer> =>
    new Promise((done, fail) => {
      last += 1;
      waiting.set(last, { done, fail });
      socket.send(JSON.stringify({ id: last, method, params }));
    });
  return { socket, send };
}

function preferences(downloads: string): string {
  const wanted = {
    // Handled, it would treat all files of the disk as one origin, which a person's Firefox does not.
    'remote.prefs.recommended': false,
    'security.fileuri.strict_origin_policy': true,
    // Saved without a question, into the folder of this run.
    'browser.download.folderList': 2,
    'browser.download.dir': downloads,
    'browser.download.useDownloadDir': true,
    'browser.download.always_ask_before_handling_new_types': false,
    // No errand of its own while a test runs.
    'app.update.auto': false,
    'app.normandy.enabled': false,
    'browser.safebrowsing.downloads.enabled': false,
    'browser.safebrowsing.malware.enabled': false,
    'browser.safebrowsing.phishing.enabled': false,
    'browser.shell.checkDefaultBrowser': false,
    'browser.startup.page': 0,
    'browser.startup.homepage_override.mstone': 'ignore',
    'datareporting.policy.dataSubmissionEnabled': false,
    'network.captive-portal-service.enabled': false,
    'network.connectivity-service.enabled': false,
    'services.settings.server': 'data:,',
    'toolkit.telemetry.enabled': false,
    'extensions.update.enabled': false,
  };
  return Object.entries(wanted)
    .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`)
    .join('');
}
