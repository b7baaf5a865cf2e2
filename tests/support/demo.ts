import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { listUsers } from "#db/queries/user.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { setUpOffice } from "#lib/operations/set-up-office.ts";
import { deskAt, must } from "#seed/desk.ts";
import { fillFennelRow } from "#seed/fennel-row.ts";
import { AUTHORITY, OFFICE, PASSWORD, PEOPLE } from "#seed/office.ts";
import { fillSettledLine, ROPEWALK, TOLLGATE } from "#seed/settled-lines.ts";

/** The example office’s lines as its seed makes them. Nothing of it is left behind. */
export async function demoLines(): Promise<{
  readonly office: Office;
  readonly fennel: LineFile;
  readonly ropewalk: LineFile;
  readonly tollgate: LineFile;
}> {
  const db = openDb(":memory:");
  const dataFolder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-demo-"));
  const [first] = PEOPLE;
  const nobody = { id: "nobody", name: "First set-up", role: "admin" } as const;
  const desk = (prefix: string) => deskAt({ db, dataFolder, prefix });
  const act = desk("qh")(nobody, "2026-04-20", "16:00");
  const user = { name: first.name, email: first.email, password: PASSWORD };
  must(await setUpOffice(act, { office: OFFICE, user }));
  const id = listUsers(db)[0]?.id ?? "";
  const boss = { id, name: first.name, role: "admin" } as const;
  const admin = { ...act, actor: boss };
  must(saveOffice(admin, OFFICE));
  must(saveAuthority(admin, AUTHORITY));
  fillSettledLine(desk("tollgate"), boss, TOLLGATE);
  fillSettledLine(desk("ropewalk"), boss, ROPEWALK);
  fillFennelRow(desk("fennel"), { office: boss, field: boss });
  const file = (lineId: string) => {
    const found = getLineFile(db, lineId);
    if (found === null) throw new Error(`The seed made no ${lineId}`);
    return found;
  };
  const lines = {
    office: OFFICE,
    fennel: file("fennel-0001"),
    ropewalk: file("ropewalk-0001"),
    tollgate: file("tollgate-0001"),
  };
  db.$client.close();
  fs.rmSync(dataFolder, { recursive: true, force: true });
  return lines;
}
