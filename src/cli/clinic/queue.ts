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
