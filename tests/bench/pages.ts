import http from "node:http";
import { goal } from "./goals.ts";
import { LONG, type Served, SMALL } from "./served.ts";

const PAGES = [
  "",
  ...["/who", "/who/by-property", "/who/land", "/who/calls", "/record"],
  ...["/camera", "/camera/log?run=run0", "/camera/pipe", "/camera/tie-ins", "/camera/plan"],
  ...["/camera/capacity", "/reconcile", "/reconcile/match", "/reconcile/line-up"],
  ...["/reconcile/undocumented", "/reconcile/test-day", "/responsibility"],
  ...["/cost", "/cost/options", "/cost/compare", "/cost/choose", "/cost/statements", "/cost/money"],
  ...["/notices", "/notices/consents", "/notices/deliveries", "/notices/facts", "/notices/write"],
  ...["/authority", "/schedule", "/schedule/reconnections", "/history"],
];
const TIMES = 5;

interface Answer {
  readonly ms: number;
  readonly bytes: number;
}

/** Every page of the longest line and of a usual one: server time and HTML. */
export async function printPages(served: Served): Promise<void> {
  console.log("");
  console.log(`Pages of the longest line beside the demo’s (median of ${TIMES}; HTML unpacked)`);
  const all: { page: string; long: Answer; small: Answer }[] = [];
  for (const page of PAGES) {
    const long = await answerOf(served, `/lines/${LONG}${page}`);
    const small = await answerOf(served, `/lines/${SMALL}${page.replace(/\?.*/, "")}`);
    all.push({ page, long, small });
    console.log(
      `  ${(page || "/").padEnd(26)}${cell(long)}${cell(small)}x${(long.ms / small.ms).toFixed(1)}`,
    );
  }
  const most = (of: (one: (typeof all)[number]) => number) => Math.max(...all.map(of));
  goal(
    "slowest page of the longest line",
    most(({ long }) => long.ms),
    {
      ...{ most: 300, unit: "ms" },
      yardstick: `${Math.round(most(({ small }) => small.ms))} ms on the demo’s line`,
    },
  );
  goal("largest page of the longest line", most(({ long }) => long.bytes) / 1024, {
    ...{ most: 500, unit: "KB" },
    yardstick: `${Math.round(most(({ small }) => small.bytes) / 1024)} KB on the demo’s line`,
  });
  goal(
    "slowest page of the demo’s line",
    most(({ small }) => small.ms),
    {
      ...{ most: 40, unit: "ms" },
      yardstick: "report from memory",
    },
  );
}

function cell({ ms, bytes }: Answer): string {
  return `${ms.toFixed(0)} ms`.padEnd(10) + `${Math.round(bytes / 1024)} KB`.padEnd(10);
}

async function answerOf(served: Served, page: string): Promise<Answer> {
  await fetched(served, page);
  const times: number[] = [];
  let bytes = 0;
  for (let time = 0; time < TIMES; time += 1) {
    const one = await fetched(served, page);
    times.push(one.ms);
    bytes = one.bytes;
  }
  times.sort((one, other) => one - other);
  return { ms: times[Math.floor(TIMES / 2)] ?? 0, bytes };
}

function fetched({ base, cookie }: Served, page: string): Promise<Answer> {
  const start = performance.now();
  return new Promise((done, fail) => {
    const request = http.get(base + page, { headers: { cookie, "accept-encoding": "identity" } });
    request.once("error", fail);
    request.once("response", (response) => {
      let bytes = 0;
      response.on("data", (part: Buffer) => {
        bytes += part.byteLength;
      });
      response.once("end", () => {
        if (response.statusCode !== 200) fail(new Error(`${page}: ${response.statusCode}`));
        else done({ ms: performance.now() - start, bytes });
      });
    });
  });
}
