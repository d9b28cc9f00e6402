// Two opinions side by side. Nothing is averaged, and neither is said to be right: what differs first is named.

import type { CoreSaid, Opinion, RestingWindow } from '../record/opinionSchema.ts';

/**
 * From this share of the union on, two windows are taken for the same stretch: the threshold of the PASCAL VOC challenge
 * (Everingham et al., Int. J. Computer Vision 88, 2010, section 4.2).
 */
export const SAME_FROM = 0.5;

export interface PairedWindows {
  readonly first: RestingWindow;
  readonly second: RestingWindow;
  /** Overlap as share of the union, SAME_FROM to 1. */
  readonly share: number;
}

/** What differs first, in the order in which a finding comes about. Ids of conditions and measures are those of the core. */
export type FirstDifference =
  | { readonly kind: 'window' }
  | { readonly kind: 'condition'; readonly id: string; readonly first: boolean | null; readonly second: boolean | null }
  | { readonly kind: 'measure'; readonly id: string; readonly first: number | null; readonly second: number | null }
  | { readonly kind: 'core'; readonly first: string; readonly second: string }
  | { readonly kind: 'judgement' }
  | { readonly kind: 'confidence' }
  | { readonly kind: 'nothing' };

export interface OpinionsCompared {
  readonly pairs: readonly PairedWindows[];
  readonly onlyFirst: readonly RestingWindow[];
  readonly onlySecond: readonly RestingWindow[];
  readonly differs: FirstDifference;
}

/** Lays two opinions beside each other. Pure; any two opinions that pass their schema may be given. */
export function compareOpinions(first: Opinion, second: Opinion): OpinionsCompared {
  const pairs = pairWindows(first.windows, second.windows);
  const onlyFirst = first.windows.filter((window) => !pairs.some((pair) => pair.first === window));
  const onlySecond = second.windows.filter((window) => !pairs.some((pair) => pair.second === window));
  const differs: FirstDifference =
    onlyFirst.length + onlySecond.length > 0
      ? { kind: 'window' }
      : (coreDiffers(pairs) ?? readersDiffer(first, second));
  return { pairs, onlyFirst, onlySecond, differs };
}

/** Overlap of two windows as share of their union, 0 to 1; 0 for other captures or banks. */
export function shareOfUnion(a: RestingWindow, b: RestingWindow): number {
  if (a.captureSha256 !== b.captureSha256 || a.bank !== b.bank) return 0;
  const overlap = Math.min(a.endS, b.endS) - Math.max(a.startS, b.startS);
  const union = Math.max(a.endS, b.endS) - Math.min(a.startS, b.startS);
  return overlap > 0 ? overlap / union : 0;
}

/** Each window with at most one of the other opinion, the best overlaps first. */
function pairWindows(first: readonly RestingWindow[], second: readonly RestingWindow[]): PairedWindows[] {
  const all = first
    .flatMap((a) => second.map((b): PairedWindows => ({ first: a, second: b, share: shareOfUnion(a, b) })))
    .filter(({ share }) => share >= SAME_FROM)
    .sort((a, b) => b.share - a.share || a.first.startS - b.first.startS || a.second.startS - b.second.startS);
  const taken: PairedWindows[] = [];
  for (const pair of all) {
    if (!taken.some((other) => other.first === pair.first || other.second === pair.second)) taken.push(pair);
  }
  return taken.sort((a, b) => first.indexOf(a.first) - first.indexOf(b.first));
}

/** Where the core gave another finding for the same window: the condition, else the measure, else the versions. */
function coreDiffers(pairs: readonly PairedWindows[]): FirstDifference | null {
  for (const pair of pairs) {
    for (const one of pair.first.coreSaid) {
      const other = pair.second.coreSaid.find(({ bank }) => bank === one.bank);
      if (other !== undefined && other.finding !== one.finding) return sourceOf(one, other);
    }
  }
  return null;
}

function sourceOf(one: CoreSaid, other: CoreSaid): FirstDifference {
  const condition = unlike(one.conditions, other.conditions)[0];
  if (condition !== undefined) return { kind: 'condition', ...condition };
  const measure = mostUnlike(one.measures, other.measures);
  if (measure !== null) return { kind: 'measure', ...measure };
  return { kind: 'core', first: one.coreVersion, second: other.coreVersion };
}

/** Entries that both know and that are not the same in both, in the order of the first map. */
function unlike<T>(one: Readonly<Record<string, T>>, other: Readonly<Record<string, T>>) {
  return Object.entries(one).flatMap(([id, first]) => {
    const second = Object.hasOwn(other, id) ? other[id] : undefined;
    return second === undefined || second === first ? [] : [{ id, first, second }];
  });
}

/** Edges that lie a little apart move every measure a little: the one that moved most, as share of the larger, is named. */
function mostUnlike(one: CoreSaid['measures'], other: CoreSaid['measures']) {
  const pairs = unlike(one, other).sort((a, b) => apart(b.first, b.second) - apart(a.first, a.second));
  return pairs[0] ?? null;
}

/** 0 to 2; a measure that only one of them could give counts as wholly other. */
function apart(a: number | null, b: number | null): number {
  if (a === null || b === null) return 1;
  return Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
}

function readersDiffer(first: Opinion, second: Opinion): FirstDifference {
  if (first.finding !== second.finding) return { kind: 'judgement' };
  return { kind: first.confidence === second.confidence ? 'nothing' : 'confidence' };
}
