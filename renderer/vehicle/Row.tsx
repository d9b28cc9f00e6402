import type { ReactNode } from 'react';

interface RowProps {
  readonly chosen: boolean;
  /** Drawn as an outline: an offer. */
  readonly outlined?: boolean;
  readonly first: ReactNode;
  readonly second?: ReactNode;
  readonly sign?: ReactNode;
  /** Small deeds at its end, seen on hover, on focus and while it is chosen. */
  readonly children?: ReactNode;
  onChoose(): void;
}

/** An entry of a margin's list: two lines, one button to go there, small deeds at its end. */
export function Row({ chosen, outlined = false, first, second, sign, children, onChoose }: RowProps) {
  return (
    <li className={`rowLine${chosen ? ' chosen' : ''}${outlined ? ' outlined' : ''}`}>
      <button type="button" className="row" aria-current={chosen || undefined} onClick={onChoose}>
        {sign}
        <span className="rowWords">
          <span className="rowFirst">{first}</span>
          {second !== undefined && <span className="rowSecond">{second}</span>}
        </span>
      </button>
      {children !== undefined && <span className="rowDeeds">{children}</span>}
    </li>
  );
}

interface ListPartProps {
  readonly title: string;
  /** The deed that adds to the list. */
  readonly add?: ReactNode;
  /** What will be here, where the list is empty. */
  readonly empty: string | null;
  readonly children: ReactNode;
}

/** A list of the margin under its heading. */
export function ListPart({ title, add, empty, children }: ListPartProps) {
  return (
    <section className="listPart" aria-label={title}>
      <div className="listHead">
        <h3>{title}</h3>
        {add}
      </div>
      {empty === null ? <ul>{children}</ul> : <p className="soft listEmpty">{empty}</p>}
    </section>
  );
}
