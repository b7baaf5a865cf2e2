import type { ReactNode } from "react";

/** A second line under a name, quieter than it. */
export function Beneath({ children }: { readonly children: ReactNode }) {
  return (
    <span className="muted small" style={{ display: "block", fontWeight: 400 }}>
      {children}
    </span>
  );
}
