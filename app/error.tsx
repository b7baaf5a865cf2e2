"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import { digestOf, faultOf } from "#app/_components/fault.ts";

/**
 * The office's machine could not do it, and the page says what to do; or something broke that nobody
 * foresaw: what was saved is safe, and there is a way on. Neighbors are only told whom to ask.
 */
export default function PageError({
  error,
  retry,
}: {
  readonly error: unknown;
  readonly retry: () => void;
}) {
  const mark = digestOf(error);
  const fault = faultOf(error);
  const isNeighbor = /^\/n(\/|$)/.test(usePathname());
  if (fault !== null)
    return (
      <div className="sheet sheet-narrow" role="alert">
        <h1 className="display">
          {isNeighbor ? "This page can’t be shown right now" : fault.title}
        </h1>
        <p>
          {isNeighbor
            ? "The office’s computer can’t read its records right now. Nothing you did is lost. Try again later, or call the office at the number on your letter."
            : fault.text}
        </p>
        <p>
          <button type="button" className="button button-main" onClick={retry}>
            Try again
          </button>
        </p>
      </div>
    );
  return (
    <div className="sheet sheet-narrow" role="alert">
      <h1 className="display">This page could not be shown</h1>
      <p>
        Something went wrong. Everything already saved is safe, and unsaved rows are kept in this
        browser.
      </p>
      <p className="cluster">
        <button type="button" className="button button-main" onClick={retry}>
          Try again
        </button>
        <Link href="/">Go to the desk</Link>
      </p>
      {mark === "" ? null : (
        <p className="muted small">
          If it happens again, give this code to your administrator: {mark}
        </p>
      )}
    </div>
  );
}
