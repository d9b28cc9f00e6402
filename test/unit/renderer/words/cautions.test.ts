import { expect, test } from 'vitest';
import { TEST_LIST } from '../../../../core/findings/nextTests/testList.ts';
import { CAUTIONS, cautionsOfTests } from '../../../../renderer/words/cautions.ts';

test.each(TEST_LIST.map(({ id }) => id))('the test %s is never asked for without a caution', (id) => {
  expect(cautionsOfTests([id]).length).toBeGreaterThan(0);
});

test('every caution for work on the car belongs to some test, and several tests say each once', () => {
  const said = cautionsOfTests(TEST_LIST.map(({ id }) => id)).map(({ id }) => id);
  expect(said).toEqual(CAUTIONS.map(({ id }) => id).filter((id) => id !== 'law' && id !== 'decides'));
});
