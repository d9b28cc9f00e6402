import type { NextTest } from '../../core/findings/finding.ts';
import { CautionList } from '../widgets/CautionList.tsx';
import { cautionsOfTests } from '../words/cautions.ts';

/** Cautions of the tests that are asked for here. */
export function TestCautions({ tests }: { readonly tests: readonly NextTest[] }) {
  return <CautionList cautions={cautionsOfTests(tests.map(({ id }) => id))} />;
}
