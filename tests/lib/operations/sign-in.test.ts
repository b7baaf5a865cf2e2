import { createHash } from "node:crypto";
import { hash, verify } from "@node-rs/argon2";
import { expect, test } from "vitest";
import { listSignIns } from "#db/queries/session.ts";
import { getAccount, getUserOfSession, listUsers } from "#db/queries/user.ts";
import { addUser } from "#lib/operations/add-user.ts";
import { changeOwnPassword } from "#lib/operations/change-own-password.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { setUpOffice } from "#lib/operations/set-up-office.ts";
import { signIn, startSession } from "#lib/operations/sign-in.ts";
import { signOut } from "#lib/operations/sign-out.ts";
import { anOffice } from "../../support/file.ts";
import { aDb, anAct, must } from "../../support/office.ts";

const PASSWORD = "three plain words";
const NOW = "2026-11-25T18:00:00.000Z";

function later(minutes: number): string {
  return new Date(Date.parse(NOW) + minutes * 60_000).toISOString();
}

async function aStaffedOffice() {
  const db = aDb();
  const act = anAct(db, { role: "admin" });
  const first = { name: "Dana Okafor", email: "Dana@example.com", password: PASSWORD };
  must(await setUpOffice(act, { office: anOffice(), user: first }));
  return { db, act };
}

function aTry(overrides: Partial<Parameters<typeof signIn>[1]> = {}) {
  return {
    email: "dana@example.com",
    password: PASSWORD,
    address: "192.0.2.1",
    agent: "Test browser 1",
    tokenHash: createHash("sha256").update("secret").digest("hex"),
    ...overrides,
  };
}

test("setUpOffice() makes the office and its first admin, once", async () => {
  const { db, act } = await aStaffedOffice();
  expect(listUsers(db)).toMatchObject([{ name: "Dana Okafor", role: "admin", disabled: false }]);
  const again = { name: "Mallory", email: "m@example.com", password: PASSWORD };
  expect(await setUpOffice(act, { office: anOffice(), user: again })).toMatchObject({
    error: { reason: "already-there" },
  });
});

test("setUpOffice() hashes with argon2id at OWASP's least cost, as another verifier reads it", async () => {
  const { db } = await aStaffedOffice();
  const passwordHash = getAccount(db, "dana@example.com")?.passwordHash ?? "";
  // OWASP Password Storage sheet @6b8819d (2026-08-17): m=19456, t=2, p=1
  expect(passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(await verify(passwordHash, PASSWORD)).toBe(true);
  expect(await verify(passwordHash, `${PASSWORD} `)).toBe(false);
});

test("setUpOffice() refuses a short password and a time zone that does not exist", async () => {
  const act = anAct(aDb());
  const user = { name: "Dana", email: "dana@example.com", password: "short" };
  expect(await setUpOffice(act, { office: anOffice(), user })).toMatchObject({
    error: { reason: "bad-value", path: "password" },
  });
  const office = anOffice({ zone: "Mars/Olympus" });
  expect(await setUpOffice(act, { office, user: { ...user, password: PASSWORD } })).toMatchObject({
    error: { reason: "bad-value", path: "zone" },
  });
});

test("signIn() starts a session that is found by the hash of its secret alone", async () => {
  const { db } = await aStaffedOffice();
  const signedIn = must(await signIn({ db, now: NOW }, aTry({ email: " DANA@example.com " })));
  expect(signedIn.user.name).toBe("Dana Okafor");
  expect(getUserOfSession(db, aTry().tokenHash, NOW)?.name).toBe("Dana Okafor");
  expect(getUserOfSession(db, "secret", NOW)).toBeNull();
});

test("signIn() gives one answer for an unknown account, a disabled one and a wrong password", async () => {
  const { db, act } = await aStaffedOffice();
  const gone = {
    name: "Gone",
    email: "gone@example.com",
    role: "office",
    password: PASSWORD,
  } as const;
  const { userId } = must(await addUser(act, gone));
  must(await changeUser(act, { userId, disabled: true }));
  const door = { db, now: NOW };
  const answers = [
    await signIn(door, aTry({ email: "nobody@example.com" })),
    await signIn(door, aTry({ email: "gone@example.com" })),
    await signIn(door, aTry({ password: "three plain Words" })),
  ];
  const answer = { ok: false, error: { reason: "wrong-password", path: "password", detail: "" } };
  expect(answers).toEqual([answer, answer, answer]);
});

test("signIn() lets an account wait at one address after five wrong passwords, then lets it in again", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 5; at += 1)
    await signIn({ db, now: later(at) }, aTry({ password: "wrong password" }));
  expect(await signIn({ db, now: later(5) }, aTry())).toEqual({
    ok: false,
    error: { reason: "too-many-tries", path: "", detail: "10 minutes" },
  });
  expect(await signIn({ db, now: later(16) }, aTry())).toMatchObject({ ok: true });
});

test("signIn() does not lock the right person out by what strangers try from elsewhere", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 5; at += 1)
    await signIn({ db, now: NOW }, aTry({ password: "wrong password", address: "198.51.100.7" }));
  expect(await signIn({ db, now: NOW }, aTry())).toMatchObject({ ok: true });
});

test("signIn() lets only known addresses in while an account is tried from all over", async () => {
  const { db } = await aStaffedOffice();
  must(await signIn({ db, now: later(-60) }, aTry({ tokenHash: "before" })));
  for (let at = 0; at < 40; at += 1)
    await signIn({ db, now: NOW }, aTry({ password: "wrong one", address: `198.51.100.${at}` }));
  expect(await signIn({ db, now: NOW }, aTry({ address: "203.0.113.9" }))).toMatchObject({
    error: { reason: "too-many-tries" },
  });
  expect(await signIn({ db, now: NOW }, aTry())).toMatchObject({ ok: true });
});

test("signIn() lets an address wait that tries many accounts, a whole IPv6 net as one", async () => {
  const { db } = await aStaffedOffice();
  const from = (at: number) => ({ address: `2001:db8:1:2::${at.toString(16)}` });
  for (let at = 0; at < 30; at += 1)
    await signIn({ db, now: NOW }, aTry({ email: `a${at}@example.com`, ...from(at) }));
  expect(await signIn({ db, now: NOW }, aTry(from(99)))).toMatchObject({
    error: { reason: "too-many-tries" },
  });
  expect(await signIn({ db, now: NOW }, aTry({ address: "198.51.100.1" }))).toMatchObject({
    ok: true,
  });
});

test("signIn() uses nothing up when the password is right, for the account or for the address", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 40; at += 1)
    expect(await signIn({ db, now: NOW }, aTry({ tokenHash: `t${at}` }))).toMatchObject({
      ok: true,
    });
  const wrong = aTry({ password: "wrong password" });
  expect(await signIn({ db, now: NOW }, wrong)).toMatchObject({
    error: { reason: "wrong-password" },
  });
});

test("signIn() makes nobody wait for a clock that was set back", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 6; at += 1)
    await signIn({ db, now: later(24 * 60) }, aTry({ password: "wrong password" }));
  expect(await signIn({ db, now: NOW }, aTry())).toMatchObject({ ok: true });
});

test("who signs in, fails, has to wait and signs out is in the log, from where and with what", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 8; at += 1)
    await signIn(
      { db, now: NOW },
      aTry({ password: "wrong password", email: " DANA@example.com" }),
    );
  must(await signIn({ db, now: later(20) }, aTry()));
  const leaving = { tokenHash: aTry().tokenHash, address: "192.0.2.1", agent: "Test browser 1" };
  signOut({ db, now: later(30) }, leaving);
  signOut({ db, now: later(31) }, leaving);
  const log = listSignIns(db, { account: "dana@example.com", most: 50 });
  expect(log.map(({ what }) => what).toReversed()).toEqual([
    ...Array.from({ length: 5 }, () => "refused"),
    "made-to-wait",
    "signed-in",
    "signed-out",
  ]);
  expect(log[0]).toEqual({
    at: later(30),
    what: "signed-out",
    account: "dana@example.com",
    address: "192.0.2.1",
    agent: "Test browser 1",
  });
  expect(JSON.stringify(log)).not.toContain("wrong password");
});

test("a password that is too easy to guess is refused, and one of a few words is taken", async () => {
  const { act } = await aStaffedOffice();
  const ruth = { name: "Ruth Lindqvist", email: "ruth@example.com", role: "office" } as const;
  const easy = [
    "aaaaaaaaaaaa",
    "password1234",
    "123456789012",
    "qwertyuiop12",
    "abcabcabcabc",
    "ruth@example.com",
    "RuthLindqvist",
    "Lindqvist1234",
  ];
  for (const password of easy)
    expect(await addUser(act, { ...ruth, password }), password).toMatchObject({
      error: { path: "password", detail: expect.stringContaining("too easy to guess") },
    });
  expect(await addUser(act, { ...ruth, password: "short" })).toMatchObject({
    error: { detail: expect.stringContaining("at least 12") },
  });
  must(await addUser(act, { ...ruth, password: "seven wet shovels" }));
});

test("changeOwnPassword() is for whoever is signed in, with the password that holds now", async () => {
  const { db, act } = await aStaffedOffice();
  const ines = {
    name: "Ines",
    email: "ines@example.com",
    role: "viewer",
    password: PASSWORD,
  } as const;
  const { userId } = must(await addUser(act, ines));
  for (const tokenHash of ["here", "elsewhere"])
    must(startSession({ db, now: NOW }, { userId, tokenHash }));
  const own = anAct(db, { actor: { id: userId, name: "Ines", role: "viewer" }, now: NOW });
  const change = { tokenHash: "here", address: "192.0.2.1", password: "seven wet shovels" };
  expect(await changeOwnPassword(own, { ...change, current: "not mine at all" })).toMatchObject({
    error: { path: "current" },
  });
  expect(
    await changeOwnPassword(own, { ...change, current: PASSWORD, password: "password1234" }),
  ).toMatchObject({ error: { path: "password" } });
  expect(
    await changeOwnPassword(own, { ...change, current: PASSWORD, password: PASSWORD }),
  ).toMatchObject({ error: { path: "password" } });
  must(await changeOwnPassword(own, { ...change, current: PASSWORD }));
  expect(getUserOfSession(db, "here", NOW)?.name).toBe("Ines");
  expect(getUserOfSession(db, "elsewhere", NOW)).toBeNull();
  const tried = { email: "ines@example.com", password: "seven wet shovels" };
  expect(await signIn({ db, now: NOW }, aTry(tried))).toMatchObject({ ok: true });
});

test("changeOwnPassword() lets nobody guess the password that holds now", async () => {
  const { db } = await aStaffedOffice();
  const [dana] = listUsers(db);
  const own = anAct(db, { actor: { id: dana?.id ?? "", name: "Dana", role: "admin" }, now: NOW });
  const guess = { tokenHash: "t", address: "192.0.2.1", password: "seven wet shovels" };
  for (let at = 0; at < 5; at += 1)
    await changeOwnPassword(own, { ...guess, current: `guess number ${at}` });
  expect(await changeOwnPassword(own, { ...guess, current: PASSWORD })).toMatchObject({
    error: { reason: "not-in-this-state", detail: expect.stringContaining("Wait 15 minutes") },
  });
});

test("signIn() counts tries that come at the same moment", async () => {
  const { db } = await aStaffedOffice();
  const wrong = aTry({ password: "wrong password" });
  const answers = await Promise.all(
    Array.from({ length: 8 }, () => signIn({ db, now: NOW }, wrong)),
  );
  const reasons = answers.map((answer) => (answer.ok ? "in" : answer.error.reason));
  expect(reasons.filter((reason) => reason === "too-many-tries")).toHaveLength(3);
});

test("getUserOfSession() ends a session that was idle for two hours, and any after twelve", async () => {
  const { db } = await aStaffedOffice();
  must(await signIn({ db, now: NOW }, aTry()));
  const { tokenHash } = aTry();
  expect(getUserOfSession(db, tokenHash, later(119))).not.toBeNull();
  expect(getUserOfSession(db, tokenHash, later(238))).not.toBeNull();
  expect(getUserOfSession(db, tokenHash, later(359))).toBeNull();
  must(await signIn({ db, now: NOW }, aTry({ tokenHash: "b" })));
  for (let at = 0; at < 720; at += 100) expect(getUserOfSession(db, "b", later(at))).not.toBeNull();
  expect(getUserOfSession(db, "b", later(721))).toBeNull();
});

test("signOut() ends the session on the server", async () => {
  const { db } = await aStaffedOffice();
  must(await signIn({ db, now: NOW }, aTry()));
  signOut({ db, now: NOW }, { tokenHash: aTry().tokenHash, address: "", agent: "" });
  expect(getUserOfSession(db, aTry().tokenHash, NOW)).toBeNull();
});

test("changeUser() ends a person's sessions with their access, their role or their password", async () => {
  for (const change of [
    { disabled: true },
    { role: "viewer" },
    { password: "other plain words" },
  ] as const) {
    const { db, act } = await aStaffedOffice();
    const ruth = {
      name: "Ruth",
      email: "ruth@example.com",
      role: "office",
      password: PASSWORD,
    } as const;
    const { userId } = must(await addUser(act, ruth));
    must(startSession({ db, now: NOW }, { userId, tokenHash: "t" }));
    expect(getUserOfSession(db, "t", NOW)?.name).toBe("Ruth");
    must(await changeUser(act, { userId, ...change }));
    expect(getUserOfSession(db, "t", NOW)).toBeNull();
  }
});

test("changeUser() never leaves the office without an admin", async () => {
  const { db, act } = await aStaffedOffice();
  const [dana] = listUsers(db);
  expect(await changeUser(act, { userId: dana?.id ?? "", role: "office" })).toMatchObject({
    error: { reason: "in-use" },
  });
  expect(await changeUser(act, { userId: dana?.id ?? "", disabled: true })).toMatchObject({
    error: { reason: "in-use" },
  });
});

test("addUser() refuses who is no admin, and an address that somebody has", async () => {
  const { db, act } = await aStaffedOffice();
  const ruth = {
    name: "Ruth",
    email: "DANA@example.com",
    role: "office",
    password: PASSWORD,
  } as const;
  expect(await addUser(anAct(db), ruth)).toMatchObject({ error: { reason: "not-allowed" } });
  expect(await addUser(act, ruth)).toMatchObject({ error: { reason: "already-there" } });
});

test("the hash that stands for nobody is one that a verifier works on", async () => {
  const started = performance.now();
  await hash(PASSWORD, { memoryCost: 19_456, timeCost: 2, parallelism: 1 });
  const honest = performance.now() - started;
  const { db } = await aStaffedOffice();
  const from = performance.now();
  await signIn({ db, now: NOW }, aTry({ email: "nobody@example.com" }));
  // Without a well-formed stand-in the answer would come at once and give unknown accounts away.
  expect(performance.now() - from).toBeGreaterThan(honest / 10);
});
