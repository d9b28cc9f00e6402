// Where the tabs of windows and offers stand above the panes, so that none covers another as long as there is room.

export interface TabWish {
  readonly id: string;
  /** Pixels of the window's ends, possibly beside the paper. */
  readonly startX: number;
  readonly endX: number;
  /** Width at which the tab says everything. */
  readonly width: number;
  /** Placed first: the selected window. */
  readonly first: boolean;
}

export interface TabPlace {
  readonly id: string;
  readonly lane: number;
  readonly left: number;
  readonly width: number;
}

/** A tab is never narrower than this: its sign and a target for a finger. */
export const LEAST_TAB_PX = 28;
const GAP_PX = 4;

/**
 * Places for the tabs that belong to windows in sight, between `left` and `right`. A tab begins where its window begins,
 * or at the edge of the paper while its window runs in from there; it is cut off where the next one begins. What finds no
 * room in `lanes` goes to the last lane, over others.
 */
export function layTabs(wishes: readonly TabWish[], left: number, right: number, lanes: number): TabPlace[] {
  const seen = wishes.filter(({ startX, endX }) => endX > left && startX < right);
  const ordered = [...seen].sort((a, b) => a.startX - b.startX || a.endX - b.endX);
  const starts = new Map(ordered.map((wish) => [wish.id, tabLeft(wish, left, right)]));
  const placed: TabPlace[] = [];
  const rank = [...ordered.filter((wish) => wish.first), ...ordered.filter((wish) => !wish.first)];
  for (const wish of rank) {
    const from = starts.get(wish.id) ?? left;
    const lane = freeLane(placed, wish, from, lanes, ordered.find(({ first }) => first)?.id ?? null);
    placed.push({ id: wish.id, lane, left: from, width: Math.min(wish.width, right - from) });
  }
  return placed.map((place) => ({ ...place, width: roomFor(place, placed) }));
}

function tabLeft(wish: TabWish, left: number, right: number): number {
  return Math.max(left, Math.min(wish.startX, right - LEAST_TAB_PX));
}

/**
 * The first lane where nothing is cut off, else the first where a least tab fits beside the `whole` one or, failing that,
 * beside any, else the last.
 */
function freeLane(
  placed: readonly TabPlace[],
  wish: TabWish,
  from: number,
  lanes: number,
  whole: string | null,
): number {
  const free = (room: (tab: { readonly id: string; readonly width: number }) => number): number | null => {
    for (let lane = 0; lane < lanes; lane++) {
      const clear = placed.every(
        (other) =>
          other.lane !== lane || from >= other.left + room(other) + GAP_PX || other.left >= from + room(wish) + GAP_PX,
      );
      if (clear) return lane;
    }
    return null;
  };
  return (
    free((tab) => tab.width) ??
    free((tab) => (tab.id === whole ? tab.width : LEAST_TAB_PX)) ??
    free(() => LEAST_TAB_PX) ??
    lanes - 1
  );
}

function roomFor(place: TabPlace, placed: readonly TabPlace[]): number {
  const next = placed
    .filter((other) => other.lane === place.lane && other.left > place.left)
    .reduce((nearest, other) => Math.min(nearest, other.left), Number.POSITIVE_INFINITY);
  return Math.max(LEAST_TAB_PX, Math.min(place.width, next - GAP_PX - place.left));
}
