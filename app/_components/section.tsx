import type { ReactNode } from "react";

/** A part of a page under its own heading, with a sentence on what it is for. */
export function Section({
  title,
  note,
  id,
  actions,
  children,
}: {
  readonly title: string;
  readonly note?: ReactNode;
  readonly id?: string;
  /** Links or buttons that belong to the whole part. */
  readonly actions?: ReactNode;
  readonly children: ReactNode;
}) {
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
