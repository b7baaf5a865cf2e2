import { EventEmitter, once } from "node:events";
import http from "node:http";
import type { AddressInfo } from "node:net";
import { expect, onTestFinished, test } from "vitest";
import { makeTurns } from "#lib/commands/turns.mjs";

/** A thread that is never idle, and a page that is never too long. */
const BUSY = { idle: () => 0, longest: Number.POSITIVE_INFINITY };

class Asked extends EventEmitter {
  destroyed = false;
  begun = 0;
  readonly begin = () => {
    this.begun += 1;
    this.emit("begun");
  };
  readonly headers = new Map<string, string>();
  setHeader(name: string, value: string): void {
    this.headers.set(name, value);
  }
  /** Answered, or its asker gone. */
  close(): void {
    this.destroyed = true;
    this.emit("close");
  }
}

function asked<N extends number>(count: N): Asked[] & { length: N } {
  return Array.from({ length: count }, () => new Asked()) as Asked[] & { length: N };
}

const begun = (all: readonly Asked[]) => all.map((one) => one.begun);

test("pages begin one after the other, in the order in which they came", () => {
  const turns = makeTurns(BUSY);
  const all = asked(3);
  for (const one of all) turns.take(one.begin, one);
  expect(begun(all)).toEqual([1, 0, 0]);
  all[0]?.close();
  expect(begun(all)).toEqual([1, 1, 0]);
  all[1]?.close();
  expect(begun(all)).toEqual([1, 1, 1]);
  all[2]?.close();
  const later = new Asked();
  turns.take(later.begin, later);
  expect(later.begun).toBe(1);
});

test("where others still wait, the reader is asked to come on a new connection next time", () => {
  const turns = makeTurns(BUSY);
  const all = asked(3);
  for (const one of all) turns.take(one.begin, one);
  all[0]?.close();
  all[1]?.close();
  expect(all.map(({ headers }) => headers.get("Connection"))).toEqual([
    undefined,
    "close",
    undefined,
  ]);
});

test("what is saved begins at once, and pages wait for it too", () => {
  const turns = makeTurns(BUSY);
  const [page, saved, next] = asked(3) as [Asked, Asked, Asked];
  turns.take(page.begin, page);
  turns.goAhead(saved.begin, saved);
  turns.take(next.begin, next);
  expect(begun([page, saved, next])).toEqual([1, 1, 0]);
  page.close();
  expect(next.begun).toBe(0);
  saved.close();
  expect(next.begun).toBe(1);
});

test("whoever is gone before the turn came is passed over", () => {
  const turns = makeTurns(BUSY);
  const [first, gone, last] = asked(3) as [Asked, Asked, Asked];
  for (const one of [first, gone, last]) turns.take(one.begin, one);
  gone.close();
  first.close();
  expect(begun([first, gone, last])).toEqual([1, 0, 1]);
});

test("the next begins while the one before waits for a disk, a lock or another process", async () => {
  let idle = 0;
  const turns = makeTurns({ ...BUSY, idle: () => idle });
  const [first, second, third] = asked(3) as [Asked, Asked, Asked];
  turns.take(first.begin, first);
  turns.take(second.begin, second);
  turns.take(third.begin, third);
  const began = once(second, "begun");
  idle += 10;
  await began;
  expect(begun([first, second, third])).toEqual([1, 1, 0]);
  // The one that waited comes back and is answered: the turn is still the second's.
  first.close();
  expect(third.begun).toBe(0);
  second.close();
  expect(third.begun).toBe(1);
});

test("the next begins beside one that takes very long", async () => {
  const turns = makeTurns({ ...BUSY, longest: 0 });
  const [first, second] = asked(2) as [Asked, Asked];
  turns.take(first.begin, first);
  turns.take(second.begin, second);
  await once(second, "begun");
  expect(begun([first, second])).toEqual([1, 1]);
});

test("on a real server, pages drawn in many steps come one by one", async () => {
  const turns = makeTurns();
  const steps: string[] = [];
  const server = http.createServer((request, response) => {
    const page = request.url ?? "";
    const step = (left: number) => {
      steps.push(page);
      if (left === 0) response.end(page);
      else setImmediate(step, left - 1);
    };
    turns.take(() => step(20), response);
  });
  onTestFinished(() => void server.close());
  await once(server.listen(0, "127.0.0.1"), "listening");
  const { port } = server.address() as AddressInfo;
  const pages = await Promise.all(
    ["/a", "/b", "/c", "/d"].map(async (page) =>
      (await fetch(`http://127.0.0.1:${port}${page}`)).text(),
    ),
  );
  expect(pages).toEqual(["/a", "/b", "/c", "/d"]);
  // However they came in: all steps of a page stand together.
  expect(steps.filter((page, at) => page !== steps[at - 1])).toHaveLength(4);
});

test("on a real server, a page that waits keeps nobody waiting", async () => {
  const turns = makeTurns({ longest: Number.POSITIVE_INFINITY });
  const begins = new EventEmitter();
  const server = http.createServer((request, response) => {
    turns.take(() => {
      if (request.url === "/quick") response.end("quick");
      else begins.emit("slow", response);
    }, response);
  });
  onTestFinished(() => void server.close());
  await once(server.listen(0, "127.0.0.1"), "listening");
  const { port } = server.address() as AddressInfo;
  const ask = async (page: string) => (await fetch(`http://127.0.0.1:${port}${page}`)).text();
  const began = once(begins, "slow");
  const slow = ask("/slow");
  const [response] = (await began) as [http.ServerResponse];
  expect(await ask("/quick")).toBe("quick");
  response.end("slow");
  expect(await slow).toBe("slow");
});
