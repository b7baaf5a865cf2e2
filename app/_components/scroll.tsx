import type { ReactNode } from "react";

/** Something wide that scrolls sideways by itself, also with the arrow keys. */
export function Scroll({ children }: { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <div className="scroll" tabIndex={0}>
      {children}
    </div>
  );
}
