import type { Metadata, Viewport } from "next";
import localFont from "next/font/local";
import type { ReactNode } from "react";
import { LastSaid } from "#app/_components/last-said.client.tsx";
import { LiveMark } from "#app/_components/live-mark.client.tsx";
import { Masthead } from "#app/_components/masthead.tsx";
import { OfficeOnly } from "#app/_components/office-only.client.tsx";
import { PressGuard } from "#app/_components/press-guard.client.tsx";
import { TopOfPage } from "#app/_components/top-of-page.client.tsx";
import { getUser } from "#app/session.ts";
import "./globals.css";

const atOnce = localFont({
  src: [
    { path: "./fonts/regular.woff2", weight: "400", style: "normal" },
    { path: "./fonts/italic.woff2", weight: "400", style: "italic" },
    { path: "./fonts/semibold.woff2", weight: "600", style: "normal" },
  ],
  variable: "--font-at-once",
  display: "swap",
  adjustFontFallback: false,
});

/** The letters of names that English and Spanish lack: fetched where a page holds one. */
const more = localFont({
  src: [
    { path: "./fonts/regular-more.woff2", weight: "400", style: "normal" },
    { path: "./fonts/italic-more.woff2", weight: "400", style: "italic" },
    { path: "./fonts/semibold-more.woff2", weight: "600", style: "normal" },
  ],
  declarations: [{ prop: "unicode-range", value: "U+0100-024F, U+1E00-1EFF" }],
  variable: "--font-more",
  display: "swap",
  preload: false,
});

export const metadata: Metadata = {
  title: { default: "Wyebook", template: "%s · Wyebook" },
  description: "The office file on shared private sewer lines.",
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  colorScheme: "light dark",
};

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const user = await getUser();
  return (
    <html lang="en" className={`${atOnce.variable} ${more.variable}`}>
      <body>
        <LiveMark />
        <LastSaid />
        <PressGuard />
        <TopOfPage />
        <a className="skip" href="#main">
          Skip to main content
        </a>
        <OfficeOnly>
          <Masthead user={user} />
        </OfficeOnly>
        <main id="main" tabIndex={-1}>
          {children}
        </main>
      </body>
    </html>
  );
}
