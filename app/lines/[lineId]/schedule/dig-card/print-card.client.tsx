"use client";

/** Prints the page that is open. */
export function PrintCard() {
  return (
    <button type="button" className="button" onClick={() => window.print()}>
      Print
    </button>
  );
}
