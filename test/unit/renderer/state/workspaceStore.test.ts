import { describe, expect, it } from 'vitest';
import { FRESH_VIEW, readViewState, viewStateSchema } from '../../../../renderer/state/viewState.ts';
import { createWorkspaceStore, VIEWS_KEPT, viewStateOf } from '../../../../renderer/state/workspaceStore.ts';

const BEGIN = {
  visible: { startS: 0, endS: 100 },
  panes: [],
  cursorS: null,
  secondCursorS: null,
  back: [],
  forward: [],
};

function shown() {
  const store = createWorkspaceStore();
  store.getState().showCapture('c', BEGIN);
  const view = () => {
    const found = store.getState().captures.c;
    if (found === undefined) throw new Error('the capture has no view');
    return found;
  };
  return { store, view };
}

describe('the ways through the views', () => {
  it('goes back and forward like a browser', () => {
    const { store, view } = shown();
    store.getState().look({ startS: 10, endS: 20 }, true);
    store.getState().look({ startS: 12, endS: 14 }, true);
    store.getState().back();
    expect(view().visible).toEqual({ startS: 10, endS: 20 });
    store.getState().back();
    expect(view().visible).toEqual({ startS: 0, endS: 100 });
    store.getState().back();
    expect(view().visible).toEqual({ startS: 0, endS: 100 });
    store.getState().forward();
    store.getState().forward();
    expect(view().visible).toEqual({ startS: 12, endS: 14 });
  });

  it('forgets what lay ahead once one looks elsewhere', () => {
    const { store, view } = shown();
    store.getState().look({ startS: 10, endS: 20 }, true);
    store.getState().back();
    store.getState().look({ startS: 50, endS: 60 }, true);
    expect(view().forward).toEqual([]);
  });

  it('takes a drag as one step, back to where it began', () => {
    const { store, view } = shown();
    for (let s = 1; s < 30; s++) store.getState().look({ startS: s, endS: 100 + s }, false);
    store.getState().look({ startS: 30, endS: 130 }, true);
    expect(view().back).toEqual([{ startS: 0, endS: 100 }]);
  });

  it('makes no step of a drag that came back to where it began', () => {
    const { store, view } = shown();
    store.getState().look({ startS: 5, endS: 105 }, false);
    store.getState().look({ startS: 0, endS: 100 }, true);
    expect(view().back).toEqual([]);
  });

  it(`keeps ${VIEWS_KEPT} views and no more`, () => {
    const { store, view } = shown();
    for (let s = 1; s <= VIEWS_KEPT + 20; s++) store.getState().look({ startS: s, endS: s + 1 }, true);
    expect(view().back).toHaveLength(VIEWS_KEPT);
    expect(view().back.at(-1)).toEqual({ startS: VIEWS_KEPT + 19, endS: VIEWS_KEPT + 20 });
  });
});

describe('a capture that is shown again', () => {
  it('is looked at as it was left', () => {
    const { store, view } = shown();
    store.getState().look({ startS: 3, endS: 4 }, true);
    store.getState().showCapture('other', BEGIN);
    store.getState().showCapture('c', BEGIN);
    expect(view().visible).toEqual({ startS: 3, endS: 4 });
  });
});

describe('the panes of a capture', () => {
  it('keep their fold, and everything else that a pane is', () => {
    const { store, view } = shown();
    const panes = [
      { id: 'p-1', channelIds: ['c1', 'c2'], share: 0.7, folded: true, scale: { kind: 'hand', low: 0, high: 1 } },
      { id: 'p-2', channelIds: ['c3'], share: 0.3, scale: { kind: 'auto' } },
    ] as const;
    store.getState().panes(panes);
    expect(view().panes).toEqual(panes);
    expect(readViewState(JSON.parse(JSON.stringify(viewStateOf(store.getState())))).captures.c?.panes).toEqual(panes);
  });
});

describe('the kept view', () => {
  it('comes back exactly', () => {
    const { store } = shown();
    store.getState().look({ startS: 1, endS: 2 }, true);
    store.getState().cursor(1.5);
    store.getState().set({ leftMargin: false, tool: 'pan', compare: { firstId: 'a', secondId: 'b', offsetS: 0.5 } });
    store.getState().select({ kind: 'window', id: 'w' });
    const kept = JSON.parse(JSON.stringify(viewStateOf(store.getState())));
    const other = createWorkspaceStore();
    other.getState().restore(readViewState(kept));
    expect(viewStateOf(other.getState())).toEqual(viewStateOf(store.getState()));
  });

  it('holds every member of the schema', () => {
    expect(Object.keys(viewStateOf(createWorkspaceStore().getState())).sort()).toEqual(
      Object.keys(viewStateSchema.shape).sort(),
    );
  });

  it.each([[null], [{}], [{ version: 2 }], ['text'], [{ ...FRESH_VIEW, tool: 'hammer' }]])(
    'begins afresh where %j was kept',
    (kept) => {
      expect(readViewState(kept)).toEqual(FRESH_VIEW);
    },
  );
});
