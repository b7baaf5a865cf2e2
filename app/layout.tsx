import type { Metadata, Viewport } from "next";
import localFont from "next/font/local";
import type { ReactNode } from "react";
import { LiveMark } from "#app/_components/live-mark.client.tsx";
import { Masthead } from "#app/_components/masthead.tsx";
import { OfficeOnly } from "#app/_components/office-only.client.tsx";
import { PressGuard } from "#app/_components/press-guard.client.tsx";
import { TopOfPage } from "#app/_components/top-of-page.client.tsx";
import { getUser } from "#app/session.ts";
import "./globals.css";

const sourceSans = localFont({
  src: [
    {
      path: "../node_modules/@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf",
      weight: "400",
      style: "normal",
    },
    {
      path: "../node_modules/@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf",
      weight: "400",
      style: "italic",
    },
    {
      path: "../node_modules/@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf",
      weight: "600",
      style: "normal",
    },
  ],
  variable: "--font-source-sans",
  display: "swap",
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
    <html lang="en" className={sourceSans.variable}>
      <body>
        <LiveMark />
        <PressGuard />
        <TopOfPage />
        <a className="skip" href="#main">
          Skip to the page
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
