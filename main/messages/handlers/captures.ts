import { dirname } from 'node:path';
import { app, dialog, type OpenDialogOptions } from 'electron';
import { withoutRecent } from '../../program/places.ts';
import type { Handlers } from '../receive.ts';
import type { ShellTools } from './tools.ts';

const FILTERS = [
  {
    name: 'Captures and bundles',
    extensions: ['csv', 'tsv', 'txt', 'log', 'dat', 'asc', 'gz', 'zip', 'mf4', 'tailtrace-bundle'],
  },
  { name: 'All files', extensions: ['*'] },
];

type Names =
  | 'pickCaptures'
  | 'sampleDrives'
  | 'findCapture'
  | 'locateCapture'
  | 'rememberCapture'
  | 'recent'
  | 'clearRecent'
  | 'takePaths';

/** Everything about files that hold captures. Paths end here. */
export function captureHandlers(tools: ShellTools): Pick<Handlers, Names> {
  const { library, places, menu } = tools;

  const ask = async (wish: OpenDialogOptions): Promise<string[]> => {
    const window = tools.window();
    const { folders } = await places.read();
    const options = {
      ...wish,
      filters: FILTERS,
      ...(folders.captures === null ? {} : { defaultPath: folders.captures }),
    };
    const { canceled, filePaths } = await (window === null
      ? dialog.showOpenDialog(options)
      : dialog.showOpenDialog(window, options));
    const [first] = filePaths;
    if (canceled || first === undefined) return [];
    const captures = dirname(first);
    await places.change((now) => ({ ...now, folders: { ...now.folders, captures } })).catch(() => {});
    return filePaths;
  };

  return {
    async pickCaptures() {
      const paths = await ask({ title: 'Open captures', properties: ['openFile', 'multiSelections'] });
      return Promise.all(paths.map((path) => library.pick(path)));
    },
    sampleDrives: () => library.sampleDrives(),
    findCapture: ({ sha256, name }) => library.find(sha256, name),
    async locateCapture({ name }) {
      const [path] = await ask({ title: `Where is ${name} now?`, properties: ['openFile'] });
      return path === undefined ? null : library.pick(path);
    },
    async rememberCapture({ token, sha256 }) {
      const path = await library.remember(token, sha256);
      if (path === null) return null;
      app.addRecentDocument(path);
      if (process.platform === 'darwin') tools.window()?.setRepresentedFilename(path);
      menu.showRecent(await library.recent());
      return null;
    },
    async recent() {
      return { captures: await library.recent(), lastVehicle: (await places.read()).lastVehicle };
    },
    async clearRecent() {
      await places.change(withoutRecent);
      app.clearRecentDocuments();
      menu.showRecent([]);
      return null;
    },
    takePaths: (paths) => Promise.all(paths.map((path) => library.take(path))),
  };
}
