import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { openLink } from "#lib/operations/open-link.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { keepLinkSecret } from "#lib/storage/link-secret.ts";
import { aDoor, aSecret, aWorker, type LinkDesk } from "../../support/link.ts";
import { aDesk, aFolder, fileOf, must } from "../../support/office.ts";
import { aPeer } from "../../support/smtp.ts";

const ADDRESS = "https://office.example.com";

function aDraft({ act, lineId }: LinkDesk, house = "12"): string {
  const one = { partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null };
  const order = { lineId, kind: "finding", replyBy: null, recipients: [one] } as const;
  return must(draftNotices(act, order)).noticeIds[0] ?? "";
}

/** A letter handed to the outbox with a private link in it. */
function aMailedLink(desk: LinkDesk, address: string | null = ADDRESS) {
  const { act, lineId } = desk;
  const secret = aSecret();
  const sent = sendNotices(act, {
    ...{ lineId, noticeIds: [aDraft(desk)], method: "mail-message", sentOn: act.today },
    links: { days: 30, address, newSecret: () => secret },
  });
  return { secret, sent };
}

/** Every row of every table, and every file in a folder, as one text. */
function everythingIn({ act }: LinkDesk, folder = act.dataFolder): string {
  const { $client: client } = act.db;
  const tables = client
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  const rows = tables.map((name) => client.prepare(`select * from "${name}"`).all());
  const files = fs
    .readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => path.join(folder, name))
    .filter((place) => fs.statSync(place).isFile())
    .map((place) => fs.readFileSync(place, "latin1"));
  return JSON.stringify(rows) + files.join("\n");
}

test("the secret of a mailed link is in the message, and afterwards nowhere in the office's data", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  const { secret } = aMailedLink(desk);
  await sendNextOutgoing(aWorker(desk, peer.smtp));
  expect(peer.received[0]?.text).toContain(`${ADDRESS}/n/${secret}\n`);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "sent" }]);
  expect(everythingIn(desk)).not.toContain(secret);
  expect(openLink(aDoor(desk), secret).ok).toBe(true);
});

test("while a message waits its link's secret is kept apart: not in the database, not in a backup", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const peer = await aPeer([450, null]);
  const { secret } = aMailedLink(desk);
  const database = path.join(act.dataFolder, "wyebook.db");
  await act.db.$client.backup(database);
  expect(fs.readFileSync(database, "latin1")).not.toContain(secret);
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ now: "2026-11-25T18:00:00.000Z", dataFolder: act.dataFolder, folder }));
  expect(everythingIn(desk, folder)).not.toContain(secret);
  const kept = fs.readdirSync(path.join(act.dataFolder, "link-secrets"));
  expect(kept).toHaveLength(1);
  const place = path.join(act.dataFolder, "link-secrets", kept[0] ?? "");
  expect(fs.statSync(place).mode & 0o777).toBe(0o600);
  expect(fs.statSync(path.dirname(place)).mode & 0o777).toBe(0o700);
  // Put off by the server, then taken: the same link goes out.
  await sendNextOutgoing(aWorker(desk, peer.smtp));
  expect(listOutgoing(act.db, lineId)).toMatchObject([{ state: "waiting" }]);
  const later = { ...aWorker(desk, peer.smtp), now: () => "2026-11-26T18:00:00.000Z" };
  await sendNextOutgoing(later);
  expect(peer.received[0]?.text).toContain(`/n/${secret}\n`);
  expect(fs.readdirSync(path.join(act.dataFolder, "link-secrets"))).toEqual([]);
});

test("a message that is refused for good takes its link's secret with it", async () => {
  const desk = aDesk();
  const peer = await aPeer([550]);
  const { secret } = aMailedLink(desk);
  await sendNextOutgoing(aWorker(desk, peer.smtp));
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "failed" }]);
  expect(everythingIn(desk)).not.toContain(secret);
});

test("without a mail server the link stands in the written message alone, which only its owner reads", async () => {
  const desk = aDesk();
  const { act } = desk;
  const { secret } = aMailedLink(desk);
  await sendNextOutgoing(aWorker(desk));
  const folder = path.join(act.dataFolder, "unsent-mail");
  const [name = "", ...others] = fs.readdirSync(folder);
  expect(others).toEqual([]);
  expect(fs.readFileSync(path.join(folder, name), "utf8")).toContain(secret);
  expect(fs.statSync(path.join(folder, name)).mode & 0o777).toBe(0o600);
  expect(fs.statSync(folder).mode & 0o777).toBe(0o700);
  fs.rmSync(folder, { recursive: true });
  expect(everythingIn(desk)).not.toContain(secret);
});

test("a message whose link's secret is gone is not sent with a dead link, and says what to do", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const peer = await aPeer();
  aMailedLink(desk);
  // As after restoring a backup, which holds no secret.
  fs.rmSync(path.join(act.dataFolder, "link-secrets"), { recursive: true });
  await sendNextOutgoing(aWorker(desk, peer.smtp));
  expect(peer.received).toEqual([]);
  const [message] = listOutgoing(act.db, lineId);
  expect(message).toMatchObject({
    state: "failed",
    problem: expect.stringContaining("private link"),
  });
  expect(fileOf(act, lineId).deliveries).toMatchObject([{ outcome: "failed" }]);
});

test("links are refused while the office has no address that opens outside, before anything is sent", () => {
  const local = [
    null,
    "http://localhost:3200",
    "http://127.0.0.1:3200",
    "http://[::1]:3200",
    "http://0.0.0.0:3200",
    "http://office",
    "http://office.local",
    "http://192.168.1.20:3200",
    "http://10.0.0.5",
    "http://172.20.3.4",
    "http://169.254.1.1",
    "http://[fd00::1]",
    "http://[fe80::1]",
  ];
  for (const address of local) {
    const desk = aDesk();
    const { sent } = aMailedLink(desk, address);
    expect(sent, String(address)).toMatchObject({ error: { path: "links" } });
    expect(listOutgoing(desk.act.db, desk.lineId)).toEqual([]);
    expect(fileOf(desk.act, desk.lineId).notices).toMatchObject([{ state: "draft" }]);
  }
  for (const address of [ADDRESS, "https://203.0.113.7", "http://wyebook.example.org:8080"])
    expect(aMailedLink(aDesk(), address).sent.ok, address).toBe(true);
});

test("a secret whose message never came about is swept after a day, one that waits is not", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const folder = path.join(act.dataFolder, "link-secrets");
  const peer = await aPeer([450]);
  aMailedLink(desk);
  keepLinkSecret(act.dataFolder, "being-handed-over", aSecret());
  keepLinkSecret(act.dataFolder, "never-came-about", aSecret());
  const old = new Date(Date.parse(act.now) - 2 * 86_400_000);
  const [waiting = ""] = listOutgoing(act.db, lineId).map(({ id }) => id);
  for (const name of [waiting, "never-came-about"])
    fs.utimesSync(path.join(folder, name), old, old);
  await sendNextOutgoing(aWorker(desk, peer.smtp));
  expect(fs.readdirSync(folder).sort()).toEqual(["being-handed-over", waiting].sort());
});
