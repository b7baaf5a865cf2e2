"use client";

import { digestOf, faultOf } from "#app/_components/fault.ts";

/**
 * The last resort, without the styles of the house: even the head of the page could not be shown. It
 * brings its own size for a phone and follows the screen's light or dark.
 */
export default function GlobalError({
  error,
  retry,
}: {
  readonly error: unknown;
  readonly retry: () => void;
}) {
  const fault = faultOf(error);
  const mark = digestOf(error);
  return (
    <html lang="en" style={{ colorScheme: "light dark" }}>
      <head>
        <title>This page could not be shown · Wyebook</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
      </head>
      <body
        style={{
          fontFamily: "system-ui, sans-serif",
          lineHeight: 1.5,
          margin: "0 auto",
          maxWidth: "36rem",
          padding: "2rem 1.25rem",
        }}
      >
        <main role="alert">
          <h1 style={{ fontSize: "1.6rem", lineHeight: 1.2 }}>
            {fault?.title ?? "This page could not be shown"}
          </h1>
          <p>{fault?.text ?? "Something went wrong. Everything already saved is safe."}</p>
          <p>
            <button
              type="button"
              style={{ font: "inherit", padding: "0.5rem 1rem" }}
              onClick={retry}
            >
              Try again
            </button>
          </p>
          {fault !== null || mark === "" ? null : (
            <p>If it happens again, give this code to your administrator: {mark}</p>
          )}
        </main>
      </body>
    </html>
  );
}
