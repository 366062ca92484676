import { setTimeout } from 'node:timers/promises';
import type { ConnectionOptions } from 'bullmq';
import { reasonOf, WrongUse } from '../exits.ts';

export const QUEUE = 'daybands-people';

/** `redis://[user:password@]host[:port][/db]`, as the queue's library wants it. Throws WrongUse for anything else. */
export function connectionOf(url: string): ConnectionOptions {
  const wrong = new WrongUse('wrongQueue', { value: url });
  let parsed: URL;
  try {
    parsed = new URL(url);
  } catch {
    throw wrong;
  }
  if (!/^rediss?:$/.test(parsed.protocol) || parsed.hostname === '') throw wrong;
  return {
    host: parsed.hostname,
    port: Number(parsed.port || 6379),
    db: Number(parsed.pathname.slice(1) || 0),
    ...(parsed.username === '' ? {} : { username: decodeURIComponent(parsed.username) }),
    ...(parsed.password === '' ? {} : { password: decodeURIComponent(parsed.password) }),
    ...(parsed.protocol === 'rediss:' ? { tls: {} } : {}),
    maxRetriesPerRequest: null,
  };
}

/** Fails soon and in words where no server answers, instead of trying for ever. Gives the address without its secret. */
export async function reach(url: string): Promise<string> {
  const connection = connectionOf(url) as { host: string; port: number };
  const shown = new URL(url);
  shown.password = '';
  shown.username = '';
  const { Redis } = await import('ioredis');
  const probe = new Redis({ ...connection, lazyConnect: true, retryStrategy: () => null, connectTimeout: 5_000 });
  probe.on('error', () => {});
  try {
    await probe.connect();
    await probe.ping();
    return shown.href;
  } catch (error) {
    throw new WrongUse('noQueue', { queue: shown.href, reason: reasonOf(error) });
  } finally {
    probe.disconnect();
  }
}

/** How often it is asked whether it is there, and how long it may take to say so. Milliseconds. */
const ASK_EVERY = 250;
const ANSWER = 2_000;

export interface Server {
  /** Resolves once it has been away for as long as it may. */
  gone: Promise<'gone'>;
  /** Resolves when it is away, however short: at once, or from then on. */
  away: () => Promise<'away'>;
  leave(): void;
}

/**
 * Asks a server again and again whether it is there. The queue's library waits for ever for an answer that does not come, and
 * says so to nobody. Counted are questions without an answer, not time: a machine that slept has missed nothing.
 */
export async function watch(url: string, wait: number): Promise<Server> {
  const { Redis } = await import('ioredis');
  const client = new Redis({
    ...(connectionOf(url) as object),
    enableOfflineQueue: false,
    commandTimeout: ANSWER,
    connectTimeout: ANSWER,
    retryStrategy: () => ASK_EVERY,
    lazyConnect: true,
  });
  client.on('error', () => {});
  // A question before it is connected fails at once, and a run that is stopped just then would leave its people in the queue.
  await client.connect().catch(() => {});
  let left = false;
  let silent: number | null = null;
  let awaited: ((said: 'away') => void)[] = [];
  const gone = (async () => {
    while (!left) {
      try {
        await client.ping();
        silent = null;
      } catch {
        silent ??= performance.now();
        for (const tell of awaited.splice(0)) tell('away');
      }
      if (silent !== null && performance.now() - silent >= wait * 1000) break;
      await setTimeout(ASK_EVERY);
    }
    if (left) await new Promise(() => {});
    return 'gone' as const;
  })();
  return {
    gone,
    away: () => (silent === null ? new Promise((tell) => awaited.push(tell)) : Promise.resolve('away')),
    leave() {
      left = true;
      awaited = [];
      client.disconnect();
    },
  };
}

/**
 * Lets connections go without waiting for a server that does not answer. The library goes on trying to reach it, whatever it is
 * told, and would keep the process for ever: so that is ended once the command has said its exit code.
 */
export function letGo(...connected: { close(): Promise<unknown>; disconnect(): Promise<unknown> }[]): void {
  for (const one of connected) {
    void one.close().catch(() => {});
    void one.disconnect().catch(() => {});
  }
  setInterval(() => {
    if (process.exitCode !== undefined) process.exit();
  }, ASK_EVERY);
}
