import type { ReactNode } from "react";
import { Fold } from "./fold.client.tsx";

/** A part of a page under its own heading, with a sentence on what it is for. */
export function Section({
  title,
  note,
  id,
  actions,
  folded,
  opened,
  foldedOnPhone,
  children,
}: {
  readonly title: string;
  readonly note?: ReactNode;
  readonly id?: string;
  /** Links or buttons that belong to the whole part. */
  readonly actions?: ReactNode;
  /** Closed until it is opened; says in a few words what is inside. For what is settled or rare. */
  readonly folded?: ReactNode;
  /** A folded part that is open at first. */
  readonly opened?: boolean;
  /** As `folded`, on a phone alone: for a long part that is not the first thing to do. */
  readonly foldedOnPhone?: ReactNode;
  readonly children: ReactNode;
}) {
  const inside = folded ?? foldedOnPhone;
  if (inside !== undefined)
    return (
      <section className="section" id={id} aria-label={title}>
        <Fold
          id={id}
          opened={opened}
          onPhone={folded === undefined}
          summary={
            <>
              <h2>{title}</h2>
              <span className="muted">{inside}</span>
            </>
          }
        >
          {actions === undefined ? null : (
            <div className="cluster screen-only section-fold-actions">{actions}</div>
          )}
          {note === undefined ? null : <p className="section-note">{note}</p>}
          {children}
        </Fold>
      </section>
    );
  return (
    <section className="section" id={id} aria-label={title}>
      <div className="section-head">
        <h2>{title}</h2>
        {actions === undefined ? null : <div className="cluster screen-only">{actions}</div>}
      </div>
      {note === undefined ? null : <p className="section-note">{note}</p>}
      {children}
    </section>
  );
}
