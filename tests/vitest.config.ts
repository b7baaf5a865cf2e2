import path from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: path.resolve(import.meta.dirname, ".."),
  resolve: {
    alias: { "server-only": path.resolve(import.meta.dirname, "support/empty.ts") },
  },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/support/quiet-console.ts"],
    env: { TZ: "America/Los_Angeles" },
    testTimeout: 30_000,
  },
});
