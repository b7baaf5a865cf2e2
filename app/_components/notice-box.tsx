import type { ReactNode } from "react";

/**
 * Words that must not be overlooked. `hold` is the loud one: only for holds and undocumented
 * tie-ins. `mend` is for what is wrong in what was typed.
 */
export function NoticeBox({
  kind = "note",
  title,
  children,
}: {
  readonly kind?: "note" | "hold" | "caution" | "mend";
  readonly title: string;
  readonly children?: ReactNode;
}) {
  return (
    <div className={`box box-${kind}`} role={kind === "mend" ? "alert" : "note"}>
      <p className="box-title">
        {kind === "hold" ? <HoldShape /> : null}
        {title}
      </p>
      {children}
    </div>
  );
}

/** The shape of whatever is loud: a lozenge, on the strip and beside words. */
function HoldShape() {
  return (
    <svg className="hold-shape" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path d="M6 0.5 11.5 6 6 11.5 0.5 6Z" fill="currentColor" />
    </svg>
  );
}
