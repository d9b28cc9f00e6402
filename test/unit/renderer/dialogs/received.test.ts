import { describe, expect, it } from 'vitest';
import { readsBlindFirst } from '../../../../renderer/dialogs/ReceivedDialog.tsx';

describe('blind first is proposed', () => {
  it.each([
    ['to a stranger', 'nothing', ['Kim'], 'Robin', true],
    ['to who never gave a name', 'nothing', ['Kim'], '', true],
    [
      'not to who wrote something in it: their own vehicle, deleted here and taken in again',
      'nothing',
      ['Kim'],
      'Kim ',
      false,
    ],
    ['not to who has the vehicle', 'other', ['Kim'], 'Robin', false],
  ] as const)('%s', (_whom, here, writers, reader, blind) => {
    expect(readsBlindFirst({ here, writers: [...writers] }, reader)).toBe(blind);
  });
});
