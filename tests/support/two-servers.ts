import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import { onTestFinished } from "vitest";
import type { DEEDS, DeedName } from "./two-servers-deeds.ts";

type Asked<D extends DeedName> = Parameters<(typeof DEEDS)[D]>[1];
type Answer<D extends DeedName> = Awaited<ReturnType<(typeof DEEDS)[D]>>;

/** Two processes that serve one folder, as two page servers do. */
export interface TwoServers {
  /** Both do it at the same moment, each in its own process; what came of either. */
  readonly both: <D extends DeedName>(
    deed: D,
    asked: readonly [Asked<D>, Asked<D>],
  ) => Promise<[Answer<D>, Answer<D>]>;
  /** Each does something of its own. */
  readonly each: <D extends DeedName, E extends DeedName>(
    first: readonly [D, Asked<D>],
    second: readonly [E, Asked<E>],
  ) => Promise<[Answer<D>, Answer<E>]>;
}

/** Starts them; they end with the test. The folder has its database already. */
export async function twoServers(dataFolder: string): Promise<TwoServers> {
  const [one, other] = await Promise.all(["Ana", "Ben"].map((name) => started(dataFolder, name)));
  if (one === undefined || other === undefined) throw new Error("Two were asked for");
  return {
    both: (deed, [first, second]) => Promise.all([ask(one, deed, first), ask(other, deed, second)]),
    each: (first, second) => Promise.all([ask(one, ...first), ask(other, ...second)]),
  };
}

async function started(dataFolder: string, name: string): Promise<ChildProcess> {
  const server = fork(path.join(import.meta.dirname, "server-apart.ts"), [dataFolder, name], {
    // As in the page server: what is the server's alone may be loaded.
    execArgv: ["--conditions=react-server", "--import", "tsx"],
  });
  onTestFinished(() => void server.kill("SIGKILL"));
  await once(server, "message");
  return server;
}

async function ask<D extends DeedName>(
  server: ChildProcess,
  deed: D,
  asked: Asked<D>,
): Promise<Answer<D>> {
  const answered = once(server, "message") as Promise<
    [{ readonly value?: Answer<D>; readonly thrown?: string }]
  >;
  server.send({ deed, asked });
  const [{ value, thrown }] = await answered;
  if (thrown !== undefined) throw new Error(thrown);
  return value as Answer<D>;
}
