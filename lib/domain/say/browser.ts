const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdg(e|A|iOS)?\//, "Edge"],
  [/\bOPR\//, "Opera"],
  [/\b(Firefox|FxiOS)\//, "Firefox"],
  [/(Chrome|Chromium|CriOS)\//, "Chrome"],
  [/\bVersion\/[\d.]+ .*Safari\//, "Safari"],
];

/** The narrower ones first: a phone names the system that it descends from too. */
const MACHINES: readonly (readonly [RegExp, string])[] = [
  [/\biPhone\b/, "an iPhone"],
  [/\biPad\b/, "an iPad"],
  [/\bAndroid\b/, "Android"],
  [/\bWindows\b/, "Windows"],
  [/\bMacintosh\b/, "a Mac"],
  [/\bCrOS\b/, "a Chromebook"],
  [/\bLinux\b/, "Linux"],
];

/**
 * What a browser says of itself, as the office would say it: `Chrome on Windows`; empty where nothing is
 * known of it. Anybody can claim anything here: it helps a person to know their own machine, no more.
 */
export function browserWords(agent: string): string {
  const nameIn = (list: readonly (readonly [RegExp, string])[]) =>
    list.find(([sign]) => sign.test(agent))?.[1] ?? "";
  const browser = nameIn(BROWSERS);
  const machine = nameIn(MACHINES);
  if (browser === "") return machine === "" ? "" : `a browser on ${machine}`;
  return machine === "" ? browser : `${browser} on ${machine}`;
}
