import { createHash } from "node:crypto";
import { hash, verify } from "@node-rs/argon2";
import { expect, test } from "vitest";
import { getAccount, getUserOfSession, listUsers } from "#db/queries/user.ts";
import { addUser } from "#lib/operations/add-user.ts";
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
  // OWASP Password Storage sheet @6b8819d (2026-08-17): m=19456, t=2, p=1 [V]
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

test("signIn() lets an account wait after five wrong passwords, then lets it in again", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 5; at += 1) {
    const wrong = aTry({ password: "wrong password", address: `192.0.2.${at}` });
    await signIn({ db, now: later(at) }, wrong);
  }
  expect(await signIn({ db, now: later(5) }, aTry({ address: "192.0.2.9" }))).toEqual({
    ok: false,
    error: { reason: "too-many-tries", path: "", detail: "10 minutes" },
  });
  expect(await signIn({ db, now: later(16) }, aTry())).toMatchObject({ ok: true });
});

test("signIn() lets an address wait that tries many accounts", async () => {
  const { db } = await aStaffedOffice();
  for (let at = 0; at < 30; at += 1)
    await signIn({ db, now: NOW }, aTry({ email: `a${at}@example.com` }));
  expect(await signIn({ db, now: NOW }, aTry())).toMatchObject({
    error: { reason: "too-many-tries" },
  });
  expect(await signIn({ db, now: NOW }, aTry({ address: "198.51.100.1" }))).toMatchObject({
    ok: true,
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
  signOut({ db }, aTry().tokenHash);
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
