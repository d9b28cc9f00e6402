import type { CaseRow } from './caseRow.ts';
import { TARGETS, type Target } from './targets.ts';

/** Scored cases of one draw, and the words over its column. */
export interface Draw {
  readonly words: string;
  readonly rows: readonly CaseRow[];
}

/** The table of all targets as Markdown: figures of each draw beside the promise. */
export function resultsTable(draws: readonly Draw[]): string {
  const rows = TARGETS.map((target) => {
    const figures = draws.map(({ rows }) => figureOf(target, rows));
    return `| ${[target.words, promise(target), ...figures].join(' | ')} |`;
  });
  const heads = ['target', 'promised', ...draws.map(({ words }) => words)];
  return [`| ${heads.join(' | ')} |`, `|${'---|'.repeat(heads.length)}`, ...rows].join('\n');
}

/** Answers by class and by fault, for whoever wants to see where the errors lie. */
export function answersTable(rows: readonly CaseRow[]): string {
  const groups = new Map<string, CaseRow[]>();
  for (const row of rows) {
    const key =
      row.fault === null ? `no fault, ${row.kind}` : `${row.fault}, ${row.kind === 'failed' ? 'failed' : 'other'}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const lines = [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, group]) => groupLine(key, group));
  return [
    '| case | cases | storing | weak | notStoring | cannotTell | right blocker |',
    '|---|---:|---:|---:|---:|---:|---:|',
    ...lines,
  ].join('\n');
}

function groupLine(key: string, group: readonly CaseRow[]): string {
  const share = (holds: (row: CaseRow) => boolean) => percent(group.filter(holds).length / group.length);
  const of = (finding: CaseRow['finding']) => share((row) => row.finding === finding);
  const named = group[0]?.fault === null ? '' : share((row) => row.named === true);
  const cells = [of('storing'), of('weak'), of('notStoring'), of('cannotTell'), named];
  return `| ${key} | ${group.length} | ${cells.join(' | ')} |`;
}

function figureOf(target: Target, draw: readonly CaseRow[]): string {
  const rows = draw.filter(target.cases);
  if (rows.length === 0) return 'no case';
  const figure = target.figure(rows);
  const [low, high] = target.promised;
  const kept = figure >= low && figure <= high;
  return `${show(target, figure)}${kept ? '' : ' **missed**'} (${rows.length})`;
}

function promise(target: Target): string {
  const [low, high] = target.promised;
  if (high === Number.POSITIVE_INFINITY) return `at least ${show(target, low)}`;
  if (low === Number.NEGATIVE_INFINITY) return `at most ${show(target, high)}`;
  return `${show(target, low)} to ${show(target, high)}`;
}

function show(target: Target, figure: number): string {
  return target.as === 'share' ? percent(figure) : figure.toFixed(3);
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
