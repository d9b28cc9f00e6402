// One file and one line: whatever is registered has an id of its own, and whatever looks like a member is registered.

import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../core/bridge/commandList.ts';
import { registry } from '../../core/registry.ts';
import { CANDIDATES, idOf, NOT_LOADED, REGISTRIES } from './registeredMembers.ts';

describe('registries', () => {
  test('are found: measures, conditions, kinds of windows, reasons, layouts, time forms, formats, panes', () => {
    const folders = REGISTRIES.map((one) => one.folder);
    expect(folders).toEqual(expect.arrayContaining(['core/measures', 'core/conditions', 'core/windows/kinds']));
  });

  test('load by themselves: none needs a page or a shell', () => {
    expect(NOT_LOADED).toEqual([]);
  });

  test.each(REGISTRIES.map((one) => [`${one.folder} ${one.name}`, one] as const))(
    '%s: no two of the same id',
    (_name, one) => {
      const ids = one.members.map(idOf).filter((id) => id !== null);
      expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    },
  );

  test('no member was written and forgotten in its index', () => {
    const forgotten = CANDIDATES.filter(({ registry: one, value }) => !one.members.includes(value));
    expect(
      forgotten.map(({ file, name, registry: one }) => `${file}: ${name} is not in ${one.folder}/index.ts`),
    ).toEqual([]);
  });

  test('building a list with two of the same id is refused by name', () => {
    const twice = () =>
      registry('measure', (member: { id: string }) => member.id, [{ id: 'a' }, { id: 'b' }, { id: 'a' }]);
    expect(twice).toThrow('measure "a"');
  });
});

describe('commands', () => {
  test('have ids of their own', () => {
    const ids = COMMANDS.map((command) => command.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('have keys of their own, where the keys act', () => {
    const keys = COMMANDS.flatMap(({ id, key, otherKey }) =>
      [key, otherKey ?? null].filter((one) => one !== null).map((one) => ({ id, key: one.toLowerCase() })),
    );
    const twice = keys.filter(({ key, id }) => keys.some((other) => other.key === key && other.id !== id));
    expect(twice).toEqual([]);
  });
});
