"use client";

import { faultOf } from "#app/_components/fault.ts";

/** The last resort, without any style of ours: even the head of the page could not be shown. */
export default function GlobalError({
  error,
  retry,
}: {
  readonly error: unknown;
  readonly retry: () => void;
}) {
  const fault = faultOf(error);
  return (
    <html lang="en">
      <body style={{ fontFamily: "system-ui, sans-serif", margin: "3rem", maxWidth: "40rem" }}>
        <h1>{fault?.title ?? "Wyebook could not show this page"}</h1>
        <p>{fault?.text ?? "Something went wrong. Everything already saved is safe."}</p>
        <button type="button" onClick={retry}>
          Try again
        </button>
      </body>
    </html>
  );
}
