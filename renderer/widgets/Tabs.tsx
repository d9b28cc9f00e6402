import { type KeyboardEvent, type ReactNode, useId } from 'react';

export interface Tab<Id extends string> {
  readonly id: Id;
  readonly words: string;
}

interface TabsProps<Id extends string> {
  readonly label: string;
  readonly tabs: readonly Tab<Id>[];
  readonly chosen: Id;
  readonly children: ReactNode;
  onChoose(id: Id): void;
}

/** Tabs by the authoring practices: one stop, arrows move and wrap, what is chosen appears at once. */
export function Tabs<Id extends string>({ label, tabs, chosen, children, onChoose }: TabsProps<Id>) {
  const base = useId();
  const move = (event: KeyboardEvent<HTMLElement>): void => {
    const at = tabs.findIndex((tab) => tab.id === chosen);
    const to = targetOf(event.key, at, tabs.length);
    const tab = to === null ? undefined : tabs[to];
    if (tab === undefined) return;
    event.preventDefault();
    onChoose(tab.id);
    document.getElementById(`${base}-${tab.id}`)?.focus();
  };
  return (
    <>
      <div role="tablist" aria-label={label} className="tabs">
        {tabs.map((tab) => (
          <button
            key={tab.id}
            id={`${base}-${tab.id}`}
            type="button"
            role="tab"
            aria-selected={tab.id === chosen}
            aria-controls={`${base}-panel`}
            tabIndex={tab.id === chosen ? 0 : -1}
            onKeyDown={move}
            onClick={() => onChoose(tab.id)}
          >
            {tab.words}
          </button>
        ))}
      </div>
      <div role="tabpanel" id={`${base}-panel`} aria-labelledby={`${base}-${chosen}`} className="tabPanel">
        {children}
      </div>
    </>
  );
}

function targetOf(key: string, at: number, count: number): number | null {
  if (key === 'ArrowRight') return (at + 1) % count;
  if (key === 'ArrowLeft') return (at - 1 + count) % count;
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  return null;
}
