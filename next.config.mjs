const development = process.env.NODE_ENV === "development";

/**
 * What a page may load: only what this installation serves. Next writes its start-up data as inline
 * scripts, which is why those are allowed; the development server alone also needs eval and a socket.
 */
const CONTENT_POLICY = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${development ? " 'unsafe-eval'" : ""}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "font-src 'self'",
  `connect-src 'self'${development ? " ws:" : ""}`,
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-src 'self'",
  "frame-ancestors 'self'",
].join("; ");

/** @type {import("next").NextConfig} */
export default {
  typedRoutes: false,
  poweredByHeader: false,
  devIndicators: false,
  // Types are checked by `npm run types`; an office that starts the program need not wait for it.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ["better-sqlite3", "@node-rs/argon2", "sharp"],
  experimental: { serverActions: { bodySizeLimit: "16mb" } },
  async headers() {
    return [
      {
        source: "/:path*",
        headers: [
          { key: "Content-Security-Policy", value: CONTENT_POLICY },
          { key: "X-Content-Type-Options", value: "nosniff" },
          { key: "X-Frame-Options", value: "SAMEORIGIN" },
          { key: "Referrer-Policy", value: "same-origin" },
          { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
          { key: "Permissions-Policy", value: "camera=(), microphone=(), geolocation=()" },
        ],
      },
      {
        // The address of a private page is its key: it is told to no other site, and kept nowhere.
        source: "/n/:path*",
        headers: [
          { key: "X-Robots-Tag", value: "noindex, nofollow, noarchive" },
          { key: "Cache-Control", value: "no-store" },
        ],
      },
      {
        // So is the address of a calendar.
        source: "/calendar/:path*",
        headers: [{ key: "X-Robots-Tag", value: "noindex, nofollow, noarchive" }],
      },
    ];
  },
};
