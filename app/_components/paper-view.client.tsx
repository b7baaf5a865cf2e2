"use client";

import dynamic from "next/dynamic";

/** The pages of a PDF, drawn in the page; loaded only where a paper is really read. */
export const PaperView = dynamic(
  () => import("./paper-pages.client.tsx").then((loaded) => loaded.PaperPages),
  { ssr: false, loading: () => <p>Opening the document…</p> },
);
