"use client";

import Link from "next/link";

/** Something broke that nobody foresaw: what was saved is safe, and there is a way on. */
export default function PageError({
  error,
  retry,
}: {
  readonly error: unknown;
  readonly retry: () => void;
}) {
  const mark = error instanceof Error && "digest" in error ? String(error.digest) : "";
  return (
    <div className="sheet sheet-narrow" role="alert">
      <h1 className="display">This page could not be shown</h1>
      <p>
        Something went wrong that the program did not foresee. What was saved before is safe, and
        rows being typed are kept in this browser.
      </p>
      <p className="cluster">
        <button type="button" className="button button-main" onClick={retry}>
          Try again
        </button>
        <Link href="/">To the desk</Link>
      </p>
      {mark === "" ? null : (
        <p className="muted small">
          If it happens again, tell whoever runs this installation: {mark}
        </p>
      )}
    </div>
  );
}
