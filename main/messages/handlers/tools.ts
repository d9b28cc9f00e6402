import type { BrowserWindow } from 'electron';
import type { Settings } from '../../../core/bridge/shellMessages.ts';
import type { HeaderChoice } from '../../../core/record/headerChoice.ts';
import type { BundleWorker } from '../../bundles/bundleWorker.ts';
import type { CaptureLibrary } from '../../captures/captureLibrary.ts';
import type { ExportTools } from '../../exports/exportFile.ts';
import type { MenuBar } from '../../menu/menuBar.ts';
import type { AppFolders } from '../../program/appFolders.ts';
import type { Places } from '../../program/places.ts';
import type { KeptFile } from '../../store/keptFile.ts';
import type { VehicleStore } from '../../store/vehicleStore.ts';

/** What the handlers of messages work with: the program's parts, made once at its start. */
export interface ShellTools {
  readonly folders: AppFolders;
  readonly store: VehicleStore;
  readonly library: CaptureLibrary;
  readonly places: KeptFile<Places>;
  readonly settings: KeptFile<Settings>;
  /** Columns that a person has chosen, by the key of the header; the last entry is the latest. */
  readonly columnChoices: KeptFile<readonly HeaderChoice[]>;
  readonly exporting: ExportTools;
  readonly bundles: BundleWorker;
  readonly menu: MenuBar;
  /** The window, or null while there is none. */
  window(): BrowserWindow | null;
  /** The page of the window has loaded, and its walls stand: it may have a port to the core. */
  connectCore(): void;
  /** The page says that everything is saved. */
  readyToClose(): void;
  /** The page has drawn what was asked for. */
  settled(): void;
}
