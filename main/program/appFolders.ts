import { join } from 'node:path';

/** Where the program's own files lie. */
export interface AppFolders {
  /** Bundles of the shell. */
  readonly main: string;
  /** Files of the window. */
  readonly renderer: string;
  /** Invented drives. */
  readonly drives: string;
  readonly icon: string;
}

/** `appPath` is the folder of package.json, or the archive that a packed program is in. */
export function appFolders(appPath: string): AppFolders {
  // The process that reads captures opens plain files: a packed program keeps its drives beside the archive.
  const beside = appPath.replace(/app\.asar$/, 'app.asar.unpacked');
  return {
    main: join(appPath, 'dist', 'main'),
    renderer: join(appPath, 'dist', 'renderer'),
    drives: join(beside, 'assets', 'drives'),
    icon: join(appPath, 'assets', 'icon.png'),
  };
}
