import type { Outcome } from '../reading/problem.ts';
import { type CoreHost, type HeldBytes, SourceFault, type WantedBytes } from './coreHost.ts';

/** Works with the bytes behind a token, and lets the file go afterwards. Bytes that stop coming are a refusal. */
export async function whileOpen<Value>(
  token: string,
  wanted: WantedBytes,
  host: CoreHost,
  work: (bytes: HeldBytes) => Promise<Outcome<Value>>,
): Promise<Outcome<Value>> {
  const opened = await host.openBytes(token, wanted);
  if (!opened.ok) return opened;
  const bytes = opened.value;
  try {
    return await work(bytes);
  } catch (fault) {
    if (fault instanceof SourceFault) return { ok: false, problem: fault.problem };
    throw fault;
  } finally {
    await bytes.close();
  }
}
