import { type ChildProcess, spawn } from "node:child_process";
import path from "node:path";
import { type ParsedMail, simpleParser } from "mailparser";
import { SMTPServer } from "smtp-server";
import { expect, onTestFinished, test } from "vitest";
import { openDb } from "#db/open.ts";
import { putOffice } from "#db/queries/office.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { MAYBE_TWICE } from "#lib/domain/notices/outgoing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { anOffice, aParty } from "../../support/file.ts";
import { addRows, aFolder, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

// What happens to the letter of whoever has this name, once; after that the server takes it.
const TROUBLES = [
  // The worker is killed, kill -9:
  "claimed",
  "connects",
  "names-sender",
  "names-reader",
  "begins-text",
  "gave-text",
  "hears-yes",
  // The server makes trouble, and the worker lives:
  "puts-off",
  "drops",
  "dies-with-it",
  "refuses",
] as const;
type Trouble = (typeof TROUBLES)[number];

/** Of these the server has a copy already when the worker hears nothing. */
const TAKEN: readonly Trouble[] = ["gave-text", "dies-with-it"];

interface Stage {
  kill: () => void;
}

/** A real mail server that makes to each letter the trouble that its reader is named for. */
async function aTroublesome(stage: Stage) {
  const received: ParsedMail[] = [];
  const done = new Set<string>();
  const comesTo = (trouble: Trouble, address = "") => {
    const mine = trouble === "connects" || address.startsWith(`${trouble}@`);
    if (!mine || done.has(trouble)) return false;
    done.add(trouble);
    return true;
  };
  let before = "";
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onConnect: (_session, next) => {
      // Greeted by nobody, the first letter stays claimed until its worker is killed.
      if (!done.has("claimed")) return;
      // The one before it is the last that this server took.
      if (before === "claimed" && comesTo("connects")) return stage.kill();
      next();
    },
    onRcptTo: ({ address }, _session, next) => {
      if (comesTo("names-sender", address) || comesTo("names-reader", address)) return stage.kill();
      if (comesTo("puts-off", address)) return next(answer(451, "try later"));
      if (address.startsWith("refuses@")) return next(answer(550, "no such box"));
      next();
    },
    onData: (stream, session, next) => {
      const address = session.envelope.rcptTo[0]?.address ?? "";
      const chunks: Buffer[] = [];
      if (comesTo("begins-text", address)) return stage.kill();
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      if (comesTo("drops", address)) {
        stream.resume();
        return connectionOf(server, session.id)?.destroy();
      }
      stream.on("end", async () => {
        received.push(await simpleParser(Buffer.concat(chunks)));
        before = address.split("@")[0] ?? "";
        if (comesTo("gave-text", address)) return stage.kill();
        if (comesTo("dies-with-it", address)) return connectionOf(server, session.id)?.destroy();
        next();
        if (comesTo("hears-yes", address)) stage.kill();
      });
    },
  });
  // Whoever is killed leaves its connection in the middle.
  server.on("error", () => {});
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => new Promise<void>((resolve) => server.close(() => resolve())));
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("The server has no port");
  return { port: address.port, received, done };
}

function answer(responseCode: number, words: string) {
  return Object.assign(new Error(words), { responseCode });
}

/** The socket of a session, which the library keeps to itself. */
function connectionOf(server: SMTPServer, id: string) {
  type Connection = { readonly id: string; readonly _socket: { destroy: () => void } };
  const { connections } = server as unknown as { readonly connections: ReadonlySet<Connection> };
  return [...connections].find((each) => each.id === id)?._socket;
}

/** An office in which a letter waits for everybody whose name is a trouble. */
function anOutbox() {
  const dataFolder = aFolder();
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  onTestFinished(() => void db.$client.close());
  const act = anAct(db, { dataFolder, now: new Date().toISOString() });
  putOffice(db, anOffice());
  const lineId = anOpenLine(act);
  addRows(
    act,
    { lineId, table: "parties" },
    TROUBLES.map((name) => aParty(name, { name, email: `${name}@example.com` })),
  );
  const recipients = TROUBLES.map((partyId) => ({
    ...{ partyId, propertyId: null, tieInId: null, splitId: null },
  }));
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients }),
  );
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: act.today }));
  const outbox = () => listOutgoing(db, lineId);
  const stateOf = (name: Trouble) => outbox().find(({ toName }) => toName === name)?.state;
  /** The time that a lease and a wait take is over. */
  const letTimePass = () => {
    const past = new Date(Date.now() - 60_000).toISOString();
    db.$client.prepare("update outbox set lease_until = ? where state = 'sending'").run(past);
    db.$client.prepare("update outbox set next_try_at = ? where state = 'waiting'").run(past);
  };
  return { act, db, dataFolder, lineId, outbox, stateOf, letTimePass };
}

function aWorker(dataFolder: string, port: number): { child: ChildProcess; ended: Promise<void> } {
  const child = spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
    env: {
      ...process.env,
      WYEBOOK_DATA: dataFolder,
      WYEBOOK_SMTP_HOST: "127.0.0.1",
      WYEBOOK_SMTP_PORT: String(port),
    },
    stdio: "ignore",
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  return { child, ended: new Promise((resolve) => child.once("exit", () => resolve())) };
}

test("kill -9 between any two steps of mail, and a server that refuses, delays, drops and dies, lose nothing; what may have gone twice is said", async () => {
  const { act, dataFolder, lineId, outbox, stateOf, letTimePass } = anOutbox();
  const stage: Stage = { kill: () => {} };
  const { port, received, done } = await aTroublesome(stage);
  let killed = 0;
  const isOver = () => outbox().every(({ state }) => state === "sent" || state === "failed");
  while (!isOver()) {
    const { child, ended } = aWorker(dataFolder, port);
    stage.kill = () => void child.kill("SIGKILL");
    const watch = setInterval(() => {
      if (!done.has("claimed") && stateOf("claimed") === "sending") {
        done.add("claimed");
        child.kill("SIGKILL");
      }
      if (isOver()) child.kill("SIGTERM");
      // What the server put off waits for minutes.
      else if (outbox().every(({ state }) => state !== "sending")) letTimePass();
    }, 5);
    await ended;
    clearInterval(watch);
    if (child.signalCode === "SIGKILL") killed += 1;
    letTimePass();
  }
  expect([...done].sort()).toEqual(TROUBLES.filter((each) => each !== "refuses").sort());
  expect(killed).toBeGreaterThanOrEqual(6);

  for (const message of outbox()) {
    const name = message.toName as Trouble;
    const copies = received.filter(({ messageId }) => messageId === message.messageId);
    expect(message.state, name).toBe(name === "refuses" ? "failed" : "sent");
    expect(copies.length, name).toBeGreaterThanOrEqual(name === "refuses" ? 0 : 1);
    if (TAKEN.includes(name)) expect(copies.length, name).toBe(2);
    // Whoever has it twice is told of; with one Message-ID, so that the reader's program can drop one.
    if (copies.length > 1) expect(message.problem, name).toContain(MAYBE_TWICE);
    const delivery = fileOf(act, lineId).deliveries.find(({ id }) => id === message.deliveryId);
    expect(delivery?.outcome, name).toBe(name === "refuses" ? "failed" : "on-its-way");
    expect(delivery?.note, name).toBe(message.problem);
  }
  // What the server had not got when the worker lived is not said to have gone twice.
  for (const name of ["puts-off", "drops", "refuses"] as const)
    expect(outbox().find(({ toName }) => toName === name)?.problem).not.toContain(MAYBE_TWICE);
});
