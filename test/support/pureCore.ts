// Core has no clock and no dice: same bytes, same windows, same version, same numbers. Under test, Math.random, Date.now
// and new Date() without an argument throw as soon as core reaches for them, by whatever alias and through whatever
// library. Tests, fast-check and the runner keep theirs: who is asking is read from the call stack.

import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const CORE = join(ROOT, 'core') + sep;
const LIBRARIES = `${sep}node_modules${sep}`;

/** The innermost frame that is neither this guard, nor a library, nor Node itself: a file of ours, or null. */
export function asker(stack: string): string | null {
  for (const line of stack.split('\n').slice(1)) {
    const place = /\(?((?:file:\/\/)?\/[^()]+|[A-Za-z]:\\[^()]+):\d+:\d+\)?$/.exec(line)?.[1];
    if (place === undefined || place.includes(LIBRARIES) || place.includes('pureCore.ts')) continue;
    return place.startsWith('file://') ? fileURLToPath(place) : place;
  }
  return null;
}

function refuseCore(what: string): void {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 60;
  const stack = new Error(what).stack ?? '';
  Error.stackTraceLimit = limit;
  const from = asker(stack);
  if (from?.startsWith(CORE)) {
    throw new Error(
      `${from.slice(ROOT.length + 1)} asked for ${what}. Core gets times and random numbers as arguments.`,
    );
  }
}

const random = Math.random;
Math.random = () => {
  refuseCore('Math.random()');
  return random();
};

const RealDate = Date;
globalThis.Date = new Proxy(RealDate, {
  construct(target, given, newTarget) {
    if (given.length === 0) refuseCore('new Date()');
    return Reflect.construct(target, given, newTarget);
  },
  apply(target, self, given) {
    refuseCore('Date()');
    return Reflect.apply(target, self, given);
  },
  get(target, key, receiver) {
    if (key !== 'now') return Reflect.get(target, key, receiver);
    return () => {
      refuseCore('Date.now()');
      return target.now();
    };
  },
});
