/** @type {import("next").NextConfig} */
export default {
  typedRoutes: false,
  poweredByHeader: false,
  serverExternalPackages: ["better-sqlite3", "@node-rs/argon2", "sharp"],
  experimental: { serverActions: { bodySizeLimit: "4mb" } },
};
