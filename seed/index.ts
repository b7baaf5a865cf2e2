import fs from "node:fs";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { listUsers } from "#db/queries/user.ts";
import { readEnv } from "#lib/env.ts";
import type { Actor } from "#lib/operations/act.ts";
import { addUser } from "#lib/operations/add-user.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { setUpOffice } from "#lib/operations/set-up-office.ts";
import { stampOffice } from "#lib/storage/data-folder.ts";
import { putUnder } from "#lib/storage/durable.ts";
import { deskAt, must } from "./desk.ts";
import { addDistrictForm } from "./district-form.ts";
import { fillFennelRow } from "./fennel-row.ts";
import { AUTHORITY, OFFICE, PASSWORD, PEOPLE } from "./office.ts";
import { fillSettledLine, ROPEWALK, TOLLGATE } from "./settled-lines.ts";

// Fills an empty data folder with an invented office and three lines, through the same operations
// that the screens use. It writes to a folder of its own first: a demo is there whole or not at all.

const { dataFolder } = readEnv();
if (fs.existsSync(dataFolder) && fs.readdirSync(dataFolder).length > 0) {
  throw new Error(`${dataFolder} is not empty; the demo is only put into an empty folder`);
}
process.umask(0o077);
const filling = `${dataFolder}.filling`;
fs.rmSync(filling, { recursive: true, force: true });
fs.mkdirSync(filling, { recursive: true });
await fill(filling);
stampOffice(filling, new Date().toISOString());
// A folder with nothing in it may be there; anything else in it is refused.
putUnder(filling, dataFolder);
console.log(`Filled ${dataFolder}: one office, ${PEOPLE.length} people, 3 lines.`);

async function fill(folder: string): Promise<void> {
  const db = openDb(path.join(folder, "wyebook.db"));
  const nobody: Actor = { id: "nobody", name: "First set-up", role: "admin" };
  const setUp = deskAt({ db, dataFolder: folder, prefix: "qh" })(nobody, "2026-04-20", "16:00");
  const [first, ...others] = PEOPLE;
  must(
    await setUpOffice(setUp, {
      office: OFFICE,
      user: { name: first.name, email: first.email, password: PASSWORD },
    }),
  );
  const boss = actorNamed(first.email);
  const admin = { ...setUp, actor: boss };
  must(saveOffice(admin, OFFICE));
  for (const person of others) must(await addUser(admin, { ...person, password: PASSWORD }));
  must(saveAuthority(admin, AUTHORITY));
  await addDistrictForm(admin);
  fillSettledLine(deskAt({ db, dataFolder: folder, prefix: "tollgate" }), boss, TOLLGATE);
  fillSettledLine(deskAt({ db, dataFolder: folder, prefix: "ropewalk" }), boss, ROPEWALK);
  fillFennelRow(deskAt({ db, dataFolder: folder, prefix: "fennel" }), {
    office: actorNamed("ruth@example.com"),
    field: actorNamed("marek@example.com"),
  });
  db.$client.close();

  function actorNamed(email: string): Actor {
    const user = listUsers(db).find((each) => each.email === email);
    if (!user) throw new Error(`There is no user ${email}`);
    return { id: user.id, name: user.name, role: user.role };
  }
}
