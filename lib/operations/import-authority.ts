import { getAuthority } from "#db/queries/authority.ts";
import { getForm, insertFormVersion, listForms } from "#db/queries/form.ts";
import { AUTHORITY_PART_NAMES, type Authority } from "#lib/domain/facts/authority.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { ok, type Result } from "#lib/result.ts";
import { keepBytes } from "#lib/storage/keep-bytes.ts";
import { readStored } from "#lib/storage/store.ts";
import type { Act, Refusal } from "./act.ts";
import { type AuthorityFile, readAuthorityFile, writeAuthorityFile } from "./authority-file.ts";
import { refuse, tell } from "./change.ts";
import { saveAuthority } from "./save-authority.ts";

/** The file of an authority with its forms in use; refused where a form's PDF is not stored any more. */
export function exportAuthority(
  { db, dataFolder }: Pick<Act, "db" | "dataFolder">,
  authorityId: string,
): Result<{ readonly name: string; readonly text: string }, Refusal> {
  const authority = getAuthority(db, authorityId);
  if (authority === null) return refuse("not-found", "", "the authority");
  const forms: AuthorityFile["forms"][number][] = [];
  for (const {
    authorityId: _of,
    version: _version,
    savedBy: _by,
    savedAt: _at,
    ...form
  } of listForms(db, authorityId)) {
    const content = readStored(dataFolder, form.sha256);
    if (content === null)
      return refuse("not-found", "", `the PDF of “${form.title}”; add it anew under Forms first`);
    forms.push({ form, content });
  }
  return ok({ name: authority.name, text: writeAuthorityFile({ authority, forms }) });
}

interface AuthorityImport {
  readonly text: string;
  /** An admin has seen what would change and wants it so. */
  readonly agreed: boolean;
}

/**
 * Takes an authority file in. Without an admin's word that what would change is meant, it is refused
 * with just that; an authority that is here is replaced part by part, a form gets a newer version and
 * its older ones stay. Refuses a file with anything wrong in it, by its path.
 */
export function importAuthority(
  act: Act,
  { text, agreed }: AuthorityImport,
): Result<{ readonly authorityId: string }, Refusal> {
  if (!mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
  const read = readAuthorityFile(text);
  if (!read.ok) {
    const said = read.error
      .slice(0, 5)
      .map(({ path, reason }) => (path === "" ? reason : `${path}: ${reason}`));
    return refuse("bad-value", "file", said.join("; "));
  }
  const { authority } = read.value;
  return act.db.transaction(
    (db) => {
      const before = getAuthority(db, authority.id);
      const forms = newVersions({ ...act, db }, read.value);
      if (!forms.ok) return forms;
      const changes = changesOf(before, authority, forms.value);
      if (!agreed)
        return refuse(
          "not-in-this-state",
          "file",
          `${changes} Choose the file again and check “Import these changes”`,
        );
      for (const { form, content } of read.value.forms)
        keepBytes(act.dataFolder, form.sha256, content);
      const saved = saveAuthority({ ...act, db }, authority);
      if (!saved.ok) return saved;
      for (const form of forms.value) insertFormVersion(db, form);
      const sentence = `Imported an authority file. ${changes}`;
      const detail = {
        authorityId: authority.id,
        forms: forms.value.map(({ id, version }) => [id, version]),
      };
      tell({ ...act, db }, { lineId: null, action: "import-authority", sentence, detail });
      return saved;
    },
    { behavior: "immediate" },
  );
}

/** The forms that are not here just so, each as the version that it becomes. */
function newVersions(
  { db, actor, now }: Act,
  { authority, forms }: AuthorityFile,
): Result<readonly AuthorityForm[], Refusal> {
  const after: AuthorityForm[] = [];
  for (const [at, { form }] of forms.entries()) {
    const before = getForm(db, form.id);
    if (before !== null && before.authorityId !== authority.id)
      return refuse(
        "bad-value",
        "file",
        `forms.${at}.id: another authority has a form with the id "${form.id}"`,
      );
    if (before !== null && isSame({ ...before, ...form }, before)) continue;
    const version = (before?.version ?? 0) + 1;
    after.push({ ...form, authorityId: authority.id, version, savedBy: actor.name, savedAt: now });
  }
  return ok(after);
}

/** What importing would change, in a sentence or two. */
function changesOf(
  before: Authority | null,
  after: Authority,
  forms: readonly AuthorityForm[],
): string {
  const titles = sayList(
    forms.map(({ title }) => `“${title}”`),
    5,
  );
  const formWords =
    forms.length === 0
      ? ""
      : ` ${forms.length === 1 ? "Form" : "Forms"} added or changed: ${titles}.`;
  if (before === null) return `${after.name} is new here.${formWords}`;
  const parts = AUTHORITY_PART_NAMES.flatMap((part) => {
    const was = new Map((before[part] as readonly { id: string }[]).map((row) => [row.id, row]));
    const rows = after[part] as readonly { id: string }[];
    const added = rows.filter(({ id }) => !was.has(id)).length;
    const changed = rows.filter((row) => was.has(row.id) && !isSame(was.get(row.id), row)).length;
    const gone = was.size - (rows.length - added);
    const said = [
      added === 0 ? "" : `${added} added`,
      changed === 0 ? "" : `${changed} changed`,
      gone === 0 ? "" : `${gone} removed`,
    ].filter((each) => each !== "");
    return said.length === 0 ? [] : [`${partWords(part)} (${said.join(", ")})`];
  });
  const facts = Object.entries(FACT_WORDS).flatMap(([field, words]) =>
    isSame(before[field as keyof typeof FACT_WORDS], after[field as keyof typeof FACT_WORDS])
      ? []
      : [words],
  );
  const all = [...facts, ...parts];
  if (all.length === 0 && forms.length === 0)
    return `Nothing would change: ${after.name} is here just so.`;
  const said = all.length === 0 ? "." : `: ${all.join(", ")}.`;
  return `${before.name} is here already; the file changes it${said}${formWords}`;
}

/** What is its own, as its page names it. */
const FACT_WORDS = {
  name: "name",
  office: "counter",
  address: "address",
  phone: "phone",
  email: "email address",
  note: "note",
} as const;

/** Parts that its page names otherwise than the file does. */
const PART_WORDS: Readonly<Record<string, string>> = {
  rules: "responsibility rules",
  conditions: "when requirements apply",
  permitOrders: "order of permits",
  drawingItems: "drawing checklist",
  scales: "drawing scales",
  pavementRules: "pavement",
  proofRules: "proof of delivery",
  inspectionKinds: "inspections",
  clockRules: "deadlines",
  refusalSteps: "steps if a neighbor refuses",
};

function partWords(part: string): string {
  return PART_WORDS[part] ?? part.replaceAll(/([A-Z])/g, (sign) => ` ${sign.toLowerCase()}`);
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
