import type { ReactNode } from "react";

/**
 * Something wide that scrolls sideways by itself, also with the arrow keys. With a label it is a
 * place on the page to go to; leave it out where the page has many alike.
 */
export function Scroll({
  label,
  children,
}: {
  readonly label?: string;
  readonly children: ReactNode;
}) {
  if (label === undefined) {
    return (
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
      <div className="scroll" tabIndex={0}>
        {children}
      </div>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
