import type { MeasureValue, WindowData } from '../measures/measure.ts';
import type { WindowKind } from '../windows/window.ts';

/** Something a window must meet to be judged. `met` is null where the capture did not record what is needed. */
export interface ConditionResult {
  readonly id: string;
  readonly met: boolean | null;
  /** The numbers behind it, or what was not recorded: "coolant 88 to 91 °C". */
  readonly detail: string;
}

/** What a condition may look at beyond its window: codes and what else the person recorded. */
export interface ConditionContext extends WindowData {
  readonly measures: ReadonlyMap<string, MeasureValue>;
  readonly troubleCodes: readonly string[];
}

/** What a condition is: one file in core/conditions, one line in its index. */
export interface Condition {
  readonly id: string;
  /** For the panel: "Engine warm". */
  readonly words: string;
  /** What it asks for and why, for help. */
  readonly help: string;
  /** The blocker that stands while the condition is not met, or null where it only weakens a finding. */
  readonly blocker: string | null;
  /** Kinds of windows it is asked of. */
  readonly kinds: 'all' | readonly WindowKind[];
  judge(context: ConditionContext): ConditionResult;
}
