import type { Session } from 'electron';
import { SCHEME } from './windowAddress.ts';

/** Addresses that never leave the computer and that no file lies behind. */
const INSIDE = [`${SCHEME}:`, 'data:', 'blob:', 'devtools:'];

/** A session that grants nothing, reaches nothing and keeps no dictionary up to date. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
  session.setBluetoothPairingHandler((_details, answer) => answer({ confirmed: false }));
  session.setSpellCheckerEnabled(false); // its word lists would be fetched from a network
  session.webRequest.onBeforeRequest(({ url }, answer) => {
    answer({ cancel: !INSIDE.some((start) => url.startsWith(start)) });
  });
  session.on('will-download', (event) => event.preventDefault()); // files leave through the save dialog only
}
