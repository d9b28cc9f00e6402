import type { ByteSource } from '../reading/readCapture.ts';
import type { CoreHost } from './coreHost.ts';

/** Reading gives way to other questions at least this often. */
const TURN_MS = 20;

/** The same bytes, with a pause for other questions between chunks. */
export function givingWay(source: ByteSource, host: CoreHost): ByteSource {
  return {
    ...source,
    async *chunks() {
      let turnBegan = host.nowMs();
      for await (const chunk of source.chunks()) {
        yield chunk;
        if (host.nowMs() - turnBegan < TURN_MS) continue;
        await host.pause();
        turnBegan = host.nowMs();
      }
    },
  };
}
