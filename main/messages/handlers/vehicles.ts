import { withoutVehicle } from '../../program/places.ts';
import type { Handlers } from '../receive.ts';
import type { ShellTools } from './tools.ts';

type Names =
  | 'listVehicles'
  | 'loadVehicle'
  | 'earlierSaves'
  | 'restoreVehicle'
  | 'saveVehicle'
  | 'deleteVehicle'
  | 'saveView';

type VehicleTools = Pick<ShellTools, 'store' | 'places' | 'library'> & {
  readonly menu: Pick<ShellTools['menu'], 'showRecent'>;
};

/** Everything about the records of vehicles. */
export function vehicleHandlers({ store, places, library, menu }: VehicleTools): Pick<Handlers, Names> {
  const rememberLast = async (id: string): Promise<void> => {
    const { lastVehicle } = await places.read();
    if (lastVehicle === id) return;
    // Which one was open last is a convenience: a full disk may not keep a vehicle from being opened.
    await places.change((now) => ({ ...now, lastVehicle: id })).catch(() => {});
  };
  return {
    listVehicles: () => store.list(),
    async loadVehicle({ id }) {
      const loaded = await store.load(id);
      if (loaded.ok) await rememberLast(id);
      return loaded;
    },
    earlierSaves: ({ id }) => store.earlier(id),
    restoreVehicle: ({ id, generation }) => store.restore(id, generation),
    async saveVehicle({ record }) {
      const saved = await store.save(record);
      if (saved.saved) await rememberLast(record.id);
      return saved;
    },
    async deleteVehicle({ id }) {
      const removed = await store.remove(id);
      if (!removed.ok) return { problem: removed.problem };
      await places.change((now) => withoutVehicle(now, id, removed.value)).catch(() => {}); // holds for this run at least
      menu.showRecent(await library.recent());
      return { problem: null };
    },
    async saveView({ id, view }) {
      await store.saveView(id, view).catch(() => {}); // a view that is not kept costs a zoom, not work
      return null;
    },
  };
}
