import { expect, test } from "vitest";
import { ownPath } from "#app/own-path.ts";

test.each([
  ["/lines/fennel-0001/cost", "/lines/fennel-0001/cost"],
  ["/search?for=12%20Fennel", "/search?for=12+Fennel"],
  ["/lines/fennel-0001/cost?_rsc=1abc", "/lines/fennel-0001/cost"],
  ["/lines/a/bring-in?table=entries&_rsc=x&to=c", "/lines/a/bring-in?table=entries&to=c"],
])("ownPath() keeps a page of this program: %s", (asked, path) => {
  expect(ownPath(asked)).toBe(path);
});

test.each([
  "",
  "https://example.com/",
  "//example.com/lines",
  "/\\example.com",
  "\\\\example.com",
  "javascript:alert(1)",
  "lines/fennel-0001",
  "/sign-in",
  "/sign-in?for=/x",
  "/setup",
])("ownPath() leads to the desk for what is no page of it: %s", (asked) => {
  expect(ownPath(asked)).toBe("/");
});
