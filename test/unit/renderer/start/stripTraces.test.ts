import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { STRIP_FROM_S, STRIP_TO_S, STRIPS } from '../../../../renderer/start/stripTraces.ts';

it.each(Object.entries(STRIPS))('the strip "%s" is what stands in its sample drive', (_name, { file, ...columns }) => {
  const text = readFileSync(new URL(`../../../../assets/drives/${file}`, import.meta.url), 'utf8');
  const inFile = text
    .trim()
    .split('\n')
    .slice(2)
    .map((line) => line.split(','))
    .filter(([timeS]) => Number(timeS) >= STRIP_FROM_S && Number(timeS) < STRIP_TO_S);
  const column = (at: number): number[] => inFile.map((cells) => Number(cells[at]));
  expect(columns).toEqual({ timesS: column(0), frontV: column(2), rearV: column(3) });
});
