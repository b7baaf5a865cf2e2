import type { ReactNode } from "react";

/** Nothing here yet: what to do first, and an example that is obviously one. */
export function Empty({
  title,
  example,
  children,
}: {
  readonly title: string;
  readonly example?: string;
  readonly children?: ReactNode;
}) {
  return (
    <div className="empty">
      <p className="strong">{title}</p>
      {children}
      {example === undefined ? null : (
        <p className="muted">
          <em>For example: {example}</em>
        </p>
      )}
    </div>
  );
}
