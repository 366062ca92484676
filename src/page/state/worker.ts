import { kept } from '../kept.ts';
import type { Answer, Given, Job } from '../messages.ts';

interface Policy {
  createScriptURL(text: string): string;
}
declare const trustedTypes:
  | { createPolicy(name: string, rules: { createScriptURL(text: string): string }): Policy }
  | undefined;

const ours = new Set<string>();
/** Only one policy of a name may be made; it lets through what this file made, and nothing else. */
const policy =
  typeof trustedTypes === 'undefined'
    ? undefined
    : trustedTypes.createPolicy('daybands', { createScriptURL: (text) => (ours.has(text) ? text : '') });

interface Waiting {
  done(value: unknown): void;
  fail(error: Error): void;
}

export interface Worker {
  ask<J extends Job>(job: J, given: Given<J>, give?: ArrayBuffer[]): Promise<Answer<J>>;
  /** Ends it and frees its memory; whoever waits is told. */
  stop(): void;
}

let code: string | undefined;

/** The address of the worker's code, which stands in the page: the only one that the policy lets become a script. */
function ownCode(): string {
  code ??= URL.createObjectURL(new Blob([kept('worker')], { type: 'text/javascript' }));
  ours.add(code);
  return code;
}

/** Starts a worker. */
export function startWorker(): Worker {
  const address = ownCode();
  // Classic: one engine starts no module worker from a Blob in a page opened from disk.
  const worker = new globalThis.Worker(policy?.createScriptURL(address) ?? address);
  const waiting = new Map<number, Waiting>();
  let last = 0;
  const fail = (error: Error): void => {
    for (const one of waiting.values()) one.fail(error);
    waiting.clear();
  };
  worker.onmessage = ({ data }: MessageEvent<{ id: number; value?: unknown; error?: string }>) => {
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.error === undefined) one?.done(data.value);
    else one?.fail(new Error(data.error));
  };
  // A worker that runs out of memory or does not start says so here and nowhere else.
  worker.onerror = (event) => fail(new Error(event.message || 'the worker ended'));
  worker.onmessageerror = () => fail(new Error('an answer could not be read'));
  return {
    ask: <J extends Job>(job: J, given: Given<J>, give: ArrayBuffer[] = []) =>
      new Promise<Answer<J>>((done, failed) => {
        last += 1;
        waiting.set(last, { done: (value) => done(value as Answer<J>), fail: failed });
        worker.postMessage({ id: last, job, given }, give);
      }),
    stop() {
      worker.terminate();
      fail(new Stopped());
    },
  };
}

/** Somebody asked for it to stop. */
export class Stopped extends Error {}
