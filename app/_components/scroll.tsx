import type { ReactNode } from "react";

/** Something wide that scrolls sideways by itself, also with the arrow keys. */
export function Scroll({
  label,
  children,
}: {
  readonly label: string;
  readonly children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group, not a landmark: the section around it is one
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <div role="group" className="scroll" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
