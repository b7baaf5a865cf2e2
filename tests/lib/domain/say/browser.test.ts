import { expect, test } from "vitest";
import { browserWords } from "#lib/domain/say/browser.ts";

// Written from memory of what browsers send.
test.each([
  [
    "Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36 Edg/130.0.0.0",
    "Edge on Windows",
  ],
  [
    "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36",
    "Chrome on Linux",
  ],
  [
    "Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1",
    "Safari on an iPhone",
  ],
  [
    "Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:131.0) Gecko/20100101 Firefox/131.0",
    "Firefox on a Mac",
  ],
  ["Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 (KHTML", "a browser on Android"],
  ["curl/8.5.0", ""],
  ["", ""],
])("browserWords() says %s as %s", (agent, words) => {
  expect(browserWords(agent)).toBe(words);
});
