import { drawerOf } from '../capture/drawerOf.ts';
import { readCapture } from '../reading/readCapture.ts';
import type { QuickCore } from './coreFunctions.ts';

/** What opens and draws captures, as every host of the service uses it. */
export const QUICK_CORE: QuickCore = { readCapture, drawerOf };
