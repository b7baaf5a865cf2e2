import { afterEach, beforeEach, expect, vi } from "vitest";

// A test that prints an error or a warning fails, unless it mocks the console itself.
beforeEach(() => {
  vi.spyOn(console, "error");
  vi.spyOn(console, "warn");
});

afterEach(() => {
  expect(console.error).not.toHaveBeenCalled();
  expect(console.warn).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
