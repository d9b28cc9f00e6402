// Every message between the window and the shell: name, request schema, reply schema. The preload makes its functions
// from this list in a loop, and the shell checks sender and schema in one wrapper. Adding a message is an entry here
// and a handler in main/messages/handlers.

import { z } from 'zod';
import { headerChoiceSchema } from '../record/headerChoice.ts';
import { signedSchema } from '../record/opinionSchema.ts';
import { vehicleRecordSchema } from '../record/schema.ts';

const nothing = z.null();
const token = z.string().min(8).max(128);
const name = z.string().max(300);
const id = z.string().min(1).max(64);
const vehicleId = id;
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** A file the person picked: a token for it, never a path. `sample` marks the invented drives of the program. */
export const pickedSchema = z.strictObject({
  token,
  name,
  bytes: z.number().nonnegative(),
  sample: z.boolean(),
  /** Set for what is meant to be a bundle for a second reader, by its ending or by what it holds. */
  bundle: z.literal(true).exactOptional(),
});
export type Picked = z.infer<typeof pickedSchema>;

export const problemSchema = z.strictObject({ id: name, what: z.string(), where: z.string(), doNext: z.string() });

/** A capture opened before. `there` is false where the file has vanished since: offer to look for it. */
export const recentCaptureSchema = pickedSchema.extend({ sha256, there: z.boolean() });
export type RecentCapture = z.infer<typeof recentCaptureSchema>;

/** A vehicle in the list, without its record. `damaged` is set where no save of it can be read: opening it is no use. */
export const vehicleEntrySchema = z.strictObject({
  id: vehicleId,
  name: z.string(),
  archived: z.boolean(),
  /** RFC 3339 time of the last save. */
  savedAt: z.string(),
  captures: z.number().int().nonnegative(),
  sample: z.boolean(),
  damaged: problemSchema.exactOptional(),
});
export type VehicleEntry = z.infer<typeof vehicleEntrySchema>;

/** What a vehicle's window looked like; not part of the record, never undone. Shape is the window's own affair. */
export const viewStateSchema = z.record(z.string(), z.json());

/** Settings of the program, for all vehicles. */
export const settingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  temperatureUnit: z.enum(['C', 'F', 'K']),
  speedUnit: z.enum(['km/h', 'mph']),
  /** What the wheel does over a pane without a modifier. */
  wheel: z.enum(['zoom', 'pan']),
  singleKeys: z.boolean(),
  /** Name put under notes and opinions. */
  reader: z.string().max(200),
  /** Licence put under opinions; empty where there is none. */
  licence: z.string().max(200),
  paper: z.enum(['A4', 'Letter']),
  showGuides: z.boolean(),
});
export type Settings = z.infer<typeof settingsSchema>;

/** The same as they lie on disk, where they may have been kept before a licence was asked for. */
export const keptSettingsSchema = settingsSchema.extend({ licence: settingsSchema.shape.licence.default('') });

export const savedSchema = z.union([
  z.strictObject({ saved: z.literal(true), savedAt: z.string() }),
  z.strictObject({ saved: z.literal(false), problem: problemSchema }),
]);

/** A save that stands behind the newest one, or bytes that were kept aside; youngest first in every list. */
export const earlierSaveSchema = z.strictObject({
  /** Names it to `restoreVehicle`. */
  generation: z.string().max(120),
  savedAt: z.string(),
  /** 'saved' is an ordinary earlier save; 'setAside' was kept because the record had been changed from outside. */
  kind: z.enum(['saved', 'setAside']),
});
export type EarlierSave = z.infer<typeof earlierSaveSchema>;

export const loadedVehicleSchema = z.union([
  z.strictObject({
    ok: z.literal(true),
    record: vehicleRecordSchema,
    view: viewStateSchema,
    /** True for a record that a newer version of the program made: it is shown, never saved. */
    readOnly: z.boolean(),
    /** Something the person should be told about this record, or null: why it is read-only, what was recovered. */
    notice: problemSchema.nullable(),
  }),
  /** A damaged record is never used in silence: the problem says so, `earlier` holds the good saves to choose from. */
  z.strictObject({ ok: z.literal(false), problem: problemSchema, earlier: z.array(earlierSaveSchema) }),
]);

/** A capture of the record as it would go into a bundle; 'changed' is a file that is no longer what was recorded. */
export const weighedCaptureSchema = z.strictObject({
  captureId: id,
  state: z.enum(['ready', 'notFound', 'changed', 'unread']),
  /** Texts in it that look like a vehicle number. */
  vehicleNumbers: z.number().int().nonnegative(),
});
export type WeighedCapture = z.infer<typeof weighedCaptureSchema>;

/** A bundle that is as it was made, before it is taken in. `writers` are the names under its notes and opinions. */
export const receivedBundleSchema = z.strictObject({
  token,
  name,
  /** Of its file. */
  sha256,
  /** To be compared with what was handed over on another path. */
  manifestSha256: sha256,
  madeAt: z.string(),
  /** Version of the core that made the numbers in it, and whether it is another one than here. */
  coreVersion: z.string(),
  otherCore: z.boolean(),
  vehicle: z.string(),
  /** What is kept of this vehicle here: nothing, the same, something else, or a record that cannot be read. */
  here: z.enum(['nothing', 'same', 'other', 'unreadable']),
  captures: z.array(z.strictObject({ id, name: z.string(), bytes: z.number().nonnegative(), enclosed: z.boolean() })),
  windows: z.number().int().nonnegative(),
  notes: z.number().int().nonnegative(),
  readings: z.number().int().nonnegative(),
  opinions: z.number().int().nonnegative(),
  writers: z.array(z.string()),
  vehicleId,
  /** What was signed in it after everything that is signed here: it may be taken over alone. Empty where there is none. */
  newOpinions: z.array(signedSchema),
});
export type ReceivedBundle = z.infer<typeof receivedBundleSchema>;

const refused = z.strictObject({ ok: z.literal(false), problem: problemSchema });

/** State of a command as the menu bar shows it. */
export const commandStateSchema = z.strictObject({
  id: z.string().max(64),
  enabled: z.boolean(),
  checked: z.boolean(),
  /** Replaces the command's words where they change: "Undo: move window". */
  words: z.string().max(200).nullable(),
});

/** Requests of the window, answered by the shell. */
export const SHELL_REQUESTS = {
  pickCaptures: { ask: nothing, reply: z.array(pickedSchema) },
  sampleDrives: {
    ask: nothing,
    reply: z.array(pickedSchema.extend({ words: z.string() })),
  },
  /** Finds a capture of the record again: by its last known place, else null. */
  findCapture: { ask: z.strictObject({ sha256, name }), reply: pickedSchema.nullable() },
  /** Asks the person where a moved capture is now. */
  locateCapture: { ask: z.strictObject({ sha256, name }), reply: pickedSchema.nullable() },
  /** Remembers that the file behind a token has this hash, and puts it on the recent list. */
  rememberCapture: { ask: z.strictObject({ token, sha256 }), reply: nothing },
  listVehicles: { ask: nothing, reply: z.array(vehicleEntrySchema) },
  loadVehicle: { ask: z.strictObject({ id: vehicleId }), reply: loadedVehicleSchema },
  /** The saves behind a vehicle's newest one. */
  earlierSaves: { ask: z.strictObject({ id: vehicleId }), reply: z.array(earlierSaveSchema) },
  /** Makes an earlier save the newest. What it replaces, damaged or not, is kept aside. */
  restoreVehicle: {
    ask: z.strictObject({ id: vehicleId, generation: z.string().max(120) }),
    reply: loadedVehicleSchema,
  },
  /**
   * Saves whole and at once; resolves when the record is safe on disk. Refused with the problem id 'changedOutside'
   * where something else changed the record since it was loaded: both are kept, and `loadVehicle` gives the other one.
   */
  saveVehicle: { ask: z.strictObject({ record: vehicleRecordSchema }), reply: savedSchema },
  /** Removes a vehicle for good: record, earlier saves, captures that came in a bundle, and where its captures lie. */
  deleteVehicle: {
    ask: z.strictObject({ id: vehicleId }),
    reply: z.strictObject({ problem: problemSchema.nullable() }),
  },
  saveView: { ask: z.strictObject({ id: vehicleId, view: viewStateSchema }), reply: nothing },
  recent: {
    ask: nothing,
    reply: z.strictObject({ captures: z.array(recentCaptureSchema), lastVehicle: vehicleId.nullable() }),
  },
  clearRecent: { ask: nothing, reply: nothing },
  settings: { ask: nothing, reply: settingsSchema },
  saveSettings: { ask: settingsSchema, reply: nothing },
  columnChoice: { ask: z.strictObject({ headerKey: name }), reply: headerChoiceSchema.nullable() },
  rememberColumnChoice: { ask: headerChoiceSchema, reply: nothing },
  /** Asks where to, then writes text or bytes there. Null where the person cancelled. */
  exportFile: {
    ask: z.strictObject({
      suggestedName: name,
      kind: z.enum(['html', 'csv', 'json', 'md', 'png', 'svg']),
      content: z.union([z.string(), z.instanceof(Uint8Array)]),
    }),
    reply: z.strictObject({ name, problem: problemSchema.nullable() }).nullable(),
  },
  /** The same for a sheet that the shell prints to PDF. */
  exportPdf: {
    ask: z.strictObject({ suggestedName: name, html: z.string(), paper: z.enum(['A4', 'Letter']) }),
    reply: z.strictObject({ name, problem: problemSchema.nullable() }).nullable(),
  },
  /** Looks through captures of the record for what may keep them out of a bundle, or out of strangers' hands. */
  weighBundle: {
    ask: z.strictObject({ captures: z.array(z.strictObject({ captureId: id, sha256, name: z.string() })).max(999) }),
    reply: z.union([
      z.strictObject({ ok: z.literal(true), captures: z.array(weighedCaptureSchema).readonly() }),
      refused,
    ]),
  },
  /**
   * Asks where to, then packs a bundle for a second reader there: the record as it is given, the sheet, and those captures
   * of the record whose ids are named. Null where the person cancelled.
   */
  exportBundle: {
    ask: z.strictObject({
      suggestedName: name,
      record: vehicleRecordSchema,
      sheet: z.string(),
      captureIds: z.array(id).max(999),
    }),
    reply: z.strictObject({ name, manifestSha256: sha256.nullable(), problem: problemSchema.nullable() }).nullable(),
  },
  /** Checks all of a bundle. */
  checkBundle: {
    ask: z.strictObject({ token }),
    reply: z.union([z.strictObject({ ok: z.literal(true), bundle: receivedBundleSchema }), refused]),
  },
  /**
   * Takes in a bundle that was checked before: its record becomes a vehicle, its captures are kept with it. `blind` where
   * its reader does not want to see what the first one came to.
   */
  takeBundle: {
    ask: z.strictObject({ token, manifestSha256: sha256, blind: z.boolean() }),
    reply: z.union([z.strictObject({ ok: z.literal(true), vehicleId }), refused]),
  },
  /** Calls off whatever is being packed, checked or taken in; it is refused with the problem id 'cancelled'. */
  cancelBundle: { ask: nothing, reply: nothing },
  /** Opens the system's print dialog for a sheet; the problem is null where it was printed or the person cancelled. */
  printSheet: {
    ask: z.strictObject({ html: z.string(), paper: z.enum(['A4', 'Letter']) }),
    reply: z.strictObject({ problem: problemSchema.nullable() }),
  },
  /** Shows the last exported file in its folder. */
  showExport: { ask: nothing, reply: nothing },
  copyText: { ask: z.strictObject({ text: z.string() }), reply: nothing },
  copyPicture: { ask: z.strictObject({ png: z.instanceof(Uint8Array) }), reply: nothing },
  setTitle: { ask: z.strictObject({ title: z.string().max(400), unsaved: z.boolean() }), reply: nothing },
  toggleFullScreen: { ask: nothing, reply: nothing },
  setCommandStates: { ask: z.array(commandStateSchema), reply: nothing },
  about: {
    ask: nothing,
    reply: z.strictObject({
      version: z.string(),
      runtime: z.string(),
      fallbackRuntime: z.boolean(),
      licences: z.array(z.strictObject({ name: z.string(), version: z.string(), licence: z.string() })),
    }),
  },
  /** Answers `closing`: everything is saved, the window may go. */
  readyToClose: { ask: nothing, reply: nothing },
  /** The window has drawn what was asked for; a snapshot may be taken. */
  settled: { ask: nothing, reply: nothing },
} as const;

export type ShellRequests = typeof SHELL_REQUESTS;
export type ShellRequestName = keyof ShellRequests;

/** Events of the shell, heard by the window. */
export const SHELL_EVENTS = {
  /** A command was chosen in the menu bar. */
  command: z.strictObject({ id: z.string() }),
  /** Files were given on the command line, by double click, by the system's recent list, or to a second start. */
  openCaptures: z.array(pickedSchema),
  /** The window is about to close: save and answer readyToClose. */
  closing: nothing,
  /** The core's own process ended; captures must be opened again. A new port follows. */
  coreLost: nothing,
} as const;

export type ShellEvents = typeof SHELL_EVENTS;
export type ShellEventName = keyof ShellEvents;

/** What the preload puts on `window.shell`. */
export type ShellBridge = {
  readonly [Name in ShellRequestName]: (
    ask: z.input<ShellRequests[Name]['ask']>,
  ) => Promise<z.output<ShellRequests[Name]['reply']>>;
} & {
  /** Tokens for dropped files. A folder or a thing without a place on disk gives an entry with a problem instead. */
  readonly takeFiles: (files: readonly unknown[]) => Promise<z.output<typeof takenSchema>>;
  /** Calls back for each event; the returned function stops it. */
  readonly on: <Name extends ShellEventName>(
    event: Name,
    hear: (payload: z.output<ShellEvents[Name]>) => void,
  ) => () => void;
  readonly platform: 'linux' | 'win32' | 'darwin';
  /** What the preload sees of its own walls: "isolated, sandboxed". */
  readonly isolation: string;
};

export const takenSchema = z.array(
  z.union([
    z.strictObject({ ok: z.literal(true), picked: pickedSchema }),
    z.strictObject({ ok: z.literal(false), problem: problemSchema }),
  ]),
);

/** The message with which the preload hands the core's port to the page, by window.postMessage. */
export const CORE_PORT_MESSAGE = 'tailtrace:core-port';
