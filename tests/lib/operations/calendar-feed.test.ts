import ICAL from "ical.js";
import { expect, test } from "vitest";
import { getOpenFeed, listFeeds } from "#db/queries/calendar-feed.ts";
import { getOffice, putOffice } from "#db/queries/office.ts";
import { insertUser } from "#db/queries/user.ts";
import { calendarFeeds } from "#db/schema.ts";
import type { UserRole } from "#lib/domain/facts/user.ts";
import type { Act } from "#lib/operations/act.ts";
import { addPermit } from "#lib/operations/add-permit.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { keepLine } from "#lib/operations/keep-line.ts";
import { makeFeed, revokeFeed } from "#lib/operations/make-feed.ts";
import { openFeed } from "#lib/operations/open-feed.ts";
import { renewSummaries } from "#lib/operations/renew-summaries.ts";
import { anInspection, anOffice } from "#tests/support/file.ts";
import { aDesk, addRows, anAct, must } from "#tests/support/office.ts";

const SECRET = "s".repeat(43);

function aUser(act: Act, id: string, role: UserRole = "viewer"): Act {
  const user = { id, name: `User ${id}`, email: `${id}@example.com`, role, disabled: false };
  insertUser(act.db, { user, passwordHash: "none", at: act.now });
  return { ...act, actor: { id, name: user.name, role } };
}

/** A desk whose locate ticket has a day, whose insurance runs out, and somebody with an address. */
function aFeedDesk({ onlyMine = false } = {}) {
  const { act, lineId } = aDesk();
  putOffice(act.db, anOffice({ insurance: "Policy 7", insuranceExpiresOn: "2026-12-20" }));
  const permit = { kind: "side-sewer", number: "", expiresOn: null, note: "" } as const;
  const { permitId } = must(addPermit(act, { lineId, ...permit }));
  addRows(act, { lineId, table: "inspections" }, [anInspection("i", permitId)]);
  renewSummaries(act.db, act.today, 10);
  const user = aUser(act, "ann");
  const { feedId } = must(makeFeed(user, { secret: SECRET, onlyMine }));
  return { act, lineId, user, feedId };
}

function read({ act }: { act: Act }, secret = SECRET, address = "203.0.113.9") {
  const { db, now, today } = act;
  return openFeed({ db, now, today, address, office: "https://office.example.com" }, secret);
}

function eventsOf(text: string) {
  return new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents("vevent");
}

test("a calendar program gets the days of all lines and the company papers, and no neighbor's name", () => {
  const desk = aFeedDesk();
  const text = must(read(desk));
  const events = eventsOf(text);
  const said = events.map((event) => String(event.getFirstPropertyValue("summary")));
  expect(said.some((each) => /insurance: expires$/i.test(each))).toBe(true);
  expect(said.some((each) => each.endsWith(", Alley behind Fennel Row"))).toBe(true);
  const uids = events.map((event) => String(event.getFirstPropertyValue("uid")));
  expect(new Set(uids).size).toBe(uids.length);
  expect(text).not.toMatch(/Brandvold|Peña|Owner/);
  for (const event of events) {
    expect(String(event.getFirstPropertyValue("url"))).toMatch(/^https:\/\/office\.example\.com\//);
    expect(event.getFirstPropertyValue("dtstamp")).not.toBeNull();
  }
  expect(must(read(desk))).toBe(text);
});

test("RFC 5545: lines end in CRLF and are no longer than 75 octets, and days are dates", () => {
  const text = must(read(aFeedDesk()));
  expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  for (const line of text.split("\r\n"))
    expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75);
  expect(text).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:/);
  expect(text).toMatch(/DTSTART;VALUE=DATE:2026\d{4}\r\n/);
});

test("an address of one's own lines shows those alone", () => {
  const desk = aFeedDesk({ onlyMine: true });
  const lines = () =>
    eventsOf(must(read(desk))).filter(
      (event) => !String(event.getFirstPropertyValue("uid")).includes("@office"),
    );
  expect(lines()).toEqual([]);
  const worker = aUser(desk.act, "bo", "office");
  const theirs = "b".repeat(43);
  must(makeFeed(worker, { secret: theirs, onlyMine: true }));
  must(keepLine(desk.act, { lineId: desk.lineId, userId: "bo" }));
  const events = eventsOf(must(read(desk, theirs)));
  expect(
    events.some((event) => String(event.getFirstPropertyValue("uid")).includes(desk.lineId)),
  ).toBe(true);
});

test("the secret is kept nowhere, and one that was revoked opens nothing more", () => {
  const { act, user, feedId } = aFeedDesk();
  expect(JSON.stringify(act.db.select().from(calendarFeeds).all())).not.toContain(SECRET);
  const other = aUser(act, "cy");
  expect(revokeFeed(other, { feedId })).toMatchObject({ error: { reason: "not-allowed" } });
  must(revokeFeed(user, { feedId }));
  must(revokeFeed(user, { feedId }));
  expect(read({ act })).toMatchObject({ error: { reason: "not-found" } });
  expect(listFeeds(act.db, "ann")[0]).toMatchObject({ revokedBy: "User ann" });
});

test("an admin revokes anybody's; who cannot sign in reads nothing", async () => {
  const { act, feedId } = aFeedDesk();
  const admin = anAct(act.db, { role: "admin" });
  must(await changeUser(admin, { userId: "ann", disabled: true }));
  expect(read({ act })).toMatchObject({ error: { reason: "not-found" } });
  must(await changeUser(admin, { userId: "ann", disabled: false }));
  expect(read({ act })).toMatchObject({ ok: true });
  must(revokeFeed(admin, { feedId }));
  expect(read({ act })).toMatchObject({ error: { reason: "not-found" } });
});

test("guesses are counted by where they come from, and readings by address", () => {
  const desk = aFeedDesk();
  for (let guess = 0; guess < 30; guess += 1)
    expect(read(desk, String(guess).padEnd(43, "x"))).toMatchObject({
      error: { reason: "not-found" },
    });
  expect(read(desk)).toMatchObject({ error: { reason: "too-many-tries" } });
  for (let reading = 0; reading < 20; reading += 1)
    expect(read(desk, SECRET, `198.51.100.${reading}`)).toMatchObject({ ok: true });
  expect(read(desk, SECRET, "198.51.100.99")).toMatchObject({
    error: { reason: "too-many-tries" },
  });
});

test("nobody has more than five", () => {
  const { act, user } = aFeedDesk();
  const make = (sign: string) => makeFeed(user, { secret: sign.repeat(43), onlyMine: false });
  for (const sign of ["a", "b", "c", "d"]) must(make(sign));
  expect(make("e")).toMatchObject({ error: { reason: "not-in-this-state" } });
  expect(getOpenFeed(act.db, "none")).toBeNull();
  expect(getOffice(act.db)).not.toBeNull();
});
