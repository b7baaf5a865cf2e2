"use client";

/** The last resort, without any style of ours: even the head of the page could not be shown. */
export default function GlobalError({ retry }: { readonly retry: () => void }) {
  return (
    <html lang="en">
      <body style={{ fontFamily: "system-ui, sans-serif", margin: "3rem", maxWidth: "40rem" }}>
        <h1>Wyebook could not show this page</h1>
        <p>Something went wrong that the program did not foresee. What was saved before is safe.</p>
        <button type="button" onClick={retry}>
          Try again
        </button>
      </body>
    </html>
  );
}
