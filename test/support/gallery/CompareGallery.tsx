import { useState } from 'react';
import { CompareStack } from '../../../renderer/plot/CompareStack.tsx';
import type { ComparedPane } from '../../../renderer/plot/compareStackProps.ts';
import { inventedDrive } from '../inventedDrive.ts';
import { syntheticCapture, syntheticSource } from '../syntheticSource.ts';

const before = inventedDrive({ rateHz: 100, durationS: 300, banks: 2, seed: 3 });
const after = inventedDrive({ rateHz: 20, durationS: 240, banks: 1, seed: 9 });

const PANES: readonly ComparedPane[] = [
  { id: 'up', firstChannelIds: ['up2'], secondChannelIds: ['up1'], share: 0.36, scale: { kind: 'quantity' } },
  { id: 'down', firstChannelIds: ['down2'], secondChannelIds: ['down1'], share: 0.36, scale: { kind: 'quantity' } },
  { id: 'rpm', firstChannelIds: ['rpm'], secondChannelIds: ['rpm'], share: 0.28, scale: { kind: 'quantity' } },
];

const FIRST = {
  capture: syntheticCapture('before.csv', before),
  source: syntheticSource(before),
  window: { startS: 66, endS: 96 },
  label: 'Before',
};
const SECOND = {
  capture: syntheticCapture('after.csv', after),
  source: syntheticSource(after),
  window: { startS: 52, endS: 80 },
  label: 'After',
};

/** Two windows of two invented drives over each other. */
export function CompareGallery({ theme }: { readonly theme: 'light' | 'dark' }) {
  const [visible, setVisible] = useState({ startS: 0, endS: 30 });
  const [offsetS, setOffset] = useState(0);
  const [cursorS, setCursor] = useState<number | null>(null);
  return (
    <CompareStack
      first={FIRST}
      second={SECOND}
      panes={PANES}
      offsetS={offsetS}
      visible={visible}
      cursorS={cursorS}
      guides
      wheel="zoom"
      theme={theme}
      onOffset={setOffset}
      onVisible={setVisible}
      onCursor={setCursor}
    />
  );
}
