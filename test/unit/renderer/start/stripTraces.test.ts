import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { STRIP_FROM_S, STRIP_TO_S, STRIPS } from '../../../../renderer/start/stripTraces.ts';

it.each(Object.entries(STRIPS))('the strip "%s" is what stands in its sample drive', (_name, { file, rows }) => {
  const text = readFileSync(new URL(`../../../../assets/drives/${file}`, import.meta.url), 'utf8');
  const inFile = text
    .trim()
    .split('\n')
    .slice(2)
    .map((line) => line.split(','))
    .map((cells) => [Number(cells[0]), Number(cells[2]), Number(cells[3])] as const)
    .filter(([timeS]) => timeS >= STRIP_FROM_S && timeS < STRIP_TO_S);
  expect(rows).toEqual(inFile);
});
