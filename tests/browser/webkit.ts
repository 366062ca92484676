import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { type Handled, keyActions, pointerActions, programOf, typeActions, within } from './driven.ts';

/** Name of an element in answers (W3C WebDriver, 12.2). */
const KEY = 'element-6066-11e4-a52e-4f735466cecf';

/** Debian's packages webkit2gtk-driver and xvfb: the engine's own small browser, and a screen without a screen. */
export const webkitProgram = (): string | undefined =>
  programOf(['Xvfb']) && programOf(['WebKitWebDriver'])
    ? programOf(['webkit2gtk-4.1/MiniBrowser', 'webkit2gtk-4.0/MiniBrowser'])
    : undefined;

/** WebKitGTK through the W3C WebDriver protocol, which is JSON over HTTP. */
export async function openWebkit(): Promise<Handled> {
  const started: ChildProcess[] = [];
  const screen = await within(30_000, 'Starting a screen', startScreen(started));
  const home = mkdtempSync(join(tmpdir(), 'webkit-'));
  const port = await freePort();
  const own = { DISPLAY: screen, HOME: home, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home };
  // Its own home, so that nothing is left from an earlier run; no compositing on a screen without a graphics card.
  const env = { ...process.env, ...own, WEBKIT_DISABLE_COMPOSITING_MODE: '1' };
  started.push(spawn('WebKitWebDriver', [`--port=${port}`], { env, stdio: 'ignore' }));
  const call = async <T>(method: string, path: string, body?: object): Promise<T> => {
    const given = body ? { method, body: JSON.stringify(body) } : { method };
    const { value } = (await (await fetch(`http://127.0.0.1:${port}${path}`, given)).json()) as {
      value: { error?: string; message?: string } | null;
    };
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value as T;
  };
  await answering(() => call('GET', '/status'));
  const { sessionId, capabilities } = await call<{ sessionId: string; capabilities: { browserVersion: string } }>(
    'POST',
    '/session',
    {
      capabilities: {
        alwaysMatch: { 'webkitgtk:browserOptions': { binary: webkitProgram(), args: ['--automation'] } },
      },
    },
  );
  const session = <T>(method: string, path: string, body?: object): Promise<T> =>
    call(method, `/session/${sessionId}${path}`, body);
  await session('POST', '/timeouts', { script: 120_000, pageLoad: 60_000 });
  const element = async (selector: string): Promise<string> =>
    (await session<Record<string, string>>('POST', '/element', { using: 'css selector', value: selector }))[KEY]!;
  const act = (actions: object[]): Promise<void> => session('POST', '/actions', { actions });
  return {
    name: 'webkit',
    version: capabilities.browserVersion,
    goto: (url) => session('POST', '/url', { url }),
    async evaluate(expression) {
      const script = `const done = arguments[0];
        Promise.resolve().then(() => (${expression})).then((value) => done({ value }), (error) => done({ error: String(error) }));`;
      const { value, error } = await session<{ value: unknown; error?: string }>('POST', '/execute/async', {
        script,
        args: [],
      });
      if (error) throw new Error(error);
      return value;
    },
    async setFiles(selector, paths) {
      await session('POST', `/element/${await element(selector)}/value`, { text: paths.join('\n') });
    },
    async click(selector) {
      await session('POST', `/element/${await element(selector)}/click`, {});
    },
    press: (...keys) => act(keyActions(keys)),
    type: (text) => act(typeActions([...text])),
    point: (kind, ...places) => act(pointerActions(kind, places, kind === 'touch')),
    clickAt: (x, y) => act(pointerActions('mouse', [[x, y]], true)),
    async screenshot(path) {
      writeFileSync(path, Buffer.from(await session<string>('GET', '/screenshot'), 'base64'));
    },
    async close() {
      // Where a dialog of the desktop is open it never answers.
      await Promise.race([session('DELETE', '').catch(() => {}), new Promise((done) => setTimeout(done, 5000))]);
      for (const child of started.reverse()) child.kill();
      rmSync(home, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Xvfb picks a free number itself and writes it to the descriptor it is given. */
function startScreen(started: ChildProcess[]): Promise<string> {
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  started.push(server);
  return new Promise((done, fail) => {
    (server.stdio[3] as Readable).once('data', (data) => done(`:${String(data).trim()}`));
    server.once('error', fail);
  });
}

function freePort(): Promise<number> {
  return new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });
}

async function answering(ask: () => Promise<unknown>): Promise<void> {
  for (const end = Date.now() + 20_000; ; ) {
    try {
      await ask();
      return;
    } catch (error) {
      if (Date.now() > end) throw error;
      await new Promise((done) => setTimeout(done, 50));
    }
  }
}
