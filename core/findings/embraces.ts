import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import type { Brick } from '../record/schema.ts';
import { counted } from '../words/numbers.ts';

/**
 * What the pair of sensors of a bank embraces, in a sentence: what lies between front and rear sensor is judged, and
 * nothing else. From the exhaust as the person laid it out, or from a third sensor in a capture; null where neither
 * tells anything, which mostly means one converter.
 */
export function embracesOf(captures: readonly Capture[], bricks: readonly Brick[], bank: Bank): string | null {
  const own = bricks.filter((brick) => bank === null || brick.bank === bank || brick.bank === null);
  const between = own.filter(({ beforeRearSensor }) => beforeRearSensor);
  if (own.length > 0) {
    const behind = own.length - between.length;
    const rest =
      behind > 0 ? ` ${counted(behind, 'brick')} behind the rear sensor ${behind > 1 ? 'are' : 'is'} not judged.` : '';
    if (between.length > 1)
      return `Front and rear sensor embrace ${counted(between.length, 'brick')}: the finding is about them together.${capital(rest)}`;
    return behind > 0 ? `Front and rear sensor embrace the first brick only.${capital(rest)}` : null;
  }
  const third = captures.some(({ channels }) =>
    channels.some(({ role, sensor, bank: of }) => role === 'downstreamO2' && sensor === 3 && of === bank),
  );
  return third ? 'Sensors 1 and 2 embrace the first brick; the one ahead of the third sensor is not judged.' : null;
}

function capital(text: string): string {
  return text.replace(/^ ([a-z])/, (_, letter: string) => ` ${letter.toUpperCase()}`);
}
