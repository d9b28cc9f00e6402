import type { TraceSource } from '../plot/traceStackProps.ts';
import type { CoreClient } from './coreClient.ts';

/** What panes draw from: one capture held by the core. A refusal (the capture was closed meanwhile) draws nothing. */
export function traceSource(core: CoreClient, key: string): TraceSource {
  return {
    views: async (channelIds, { startS, endS }, buckets) => {
      const outcome = await core.ask('views', { key, channelIds, startS, endS, buckets });
      return outcome.ok ? outcome.value : [];
    },
    valuesAt: async (channelIds, timeS) => {
      const outcome = await core.ask('valuesAt', { key, channelIds, timeS });
      return outcome.ok ? outcome.value : [];
    },
    nextStop: async (channelId, fromS, direction, stop) => {
      const outcome = await core.ask('nextStop', { key, channelId, fromS, direction, stop });
      return outcome.ok ? outcome.value : null;
    },
    describe: async (channelIds, { startS, endS }) => {
      const outcome = await core.ask('describe', { key, channelIds, startS, endS });
      return outcome.ok ? outcome.value : [];
    },
  };
}
