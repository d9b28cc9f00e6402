import type { Program } from '../program/program.ts';

/** Asks the shell again what can be opened. */
export async function refreshShelf({ shell, shelf }: Program): Promise<void> {
  const [vehicles, recent, samples] = await Promise.all([
    shell.listVehicles(null),
    shell.recent(null),
    shell.sampleDrives(null),
  ]);
  shelf.setState({ vehicles, recent: recent.captures, samples });
}
