import { defineConfig } from 'vitest/config';

// Three projects, run one after the other so that the real program has both cores to itself:
//   unit      laws, units and outside oracles of core, main and renderer; the walls of the house
//   fault     full disks, killed saves, damaged and hostile files
//   endToEnd  the real program, one file at a time
// Tests do not retry, wait by the clock or share state, so a failure is always a finding.

/** Ends a test that hangs. Far above what any takes, on a slow and busy machine too. */
const HANGS_MS = 300_000;

const shared = {
  environment: 'node',
  setupFiles: ['test/support/fixedSeed.ts', 'test/support/pureCore.ts'],
  allowOnly: false,
  restoreMocks: true,
} as const;

export default defineConfig({
  // JSX as the build makes it.
  oxc: { jsx: { runtime: 'automatic' } },
  test: {
    reporters: ['default'],
    projects: [
      {
        extends: true,
        test: {
          ...shared,
          name: 'unit',
          include: ['test/{unit,property,reference,architecture}/**/*.test.{ts,tsx}'],
          testTimeout: HANGS_MS,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          ...shared,
          name: 'fault',
          include: ['test/fault/**/*.test.ts'],
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          ...shared,
          name: 'endToEnd',
          include: ['test/endToEnd/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
