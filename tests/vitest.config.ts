import path from "node:path";
import { defineConfig } from "vitest/config";

/** Tests of pure code keep nothing between them, so that one worker may run many of their files. */
const PURE = [
  "tests/app/**/*.test.{ts,tsx}",
  "tests/lib/domain/**/*.test.ts",
  "tests/published/**/*.test.ts",
  "tests/derived/**/*.test.ts",
];

export default defineConfig({
  root: path.resolve(import.meta.dirname, ".."),
  resolve: {
    alias: { "server-only": path.resolve(import.meta.dirname, "support/empty.ts") },
  },
  test: {
    setupFiles: ["tests/support/quiet-console.ts", "tests/support/fixed-seed.ts"],
    env: { TZ: process.env["WYEBOOK_TEST_ZONE"] ?? "America/Los_Angeles" },
    // For what hangs. How long a thing takes is measured by the bench, at rest.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    projects: [
      { extends: true, test: { name: "pure", include: PURE, isolate: false } },
      {
        extends: true,
        test: { name: "parts", include: ["tests/**/*.test.{ts,tsx}"], exclude: PURE },
      },
    ],
  },
});
