"use client";

import dynamic from "next/dynamic";

/** The pages of an authority's blank form; loaded only where they are looked at. */
export const FormPictureView = dynamic(
  () => import("./form-page.client.tsx").then((loaded) => loaded.FormPicture),
  { ssr: false, loading: () => <p>Opening the form …</p> },
);
