import { asc, desc, eq } from "drizzle-orm";
import { FieldsShape, MappingsShape, NotesShape, PagesShape } from "#db/form-shape.ts";
import type { Db } from "#db/open.ts";
import { forms } from "#db/schema.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";

/** What the parts of a form have to be, wherever they come from: a page, or another office's file. */
export const FORM_PARTS = {
  pages: PagesShape,
  fields: FieldsShape,
  notes: NotesShape,
  mappings: MappingsShape,
} as const;

/** The version in use of every form of an authority, by title; those that are no longer used too. */
export function listForms(db: Db, authorityId: string): AuthorityForm[] {
  const versions = db
    .select()
    .from(forms)
    .where(eq(forms.authorityId, authorityId))
    .orderBy(asc(forms.version))
    .all();
  const latest = new Map(versions.map((form) => [form.id, form]));
  return [...latest.values()].toSorted((a, b) => a.title.localeCompare(b.title, "en-US"));
}

/** The version in use of a form; null where there is none. */
export function getForm(db: Db, formId: string): AuthorityForm | null {
  return (
    db.select().from(forms).where(eq(forms.id, formId)).orderBy(desc(forms.version)).get() ?? null
  );
}

/** Every version of a form, the newest first. */
export function listFormVersions(db: Db, formId: string): AuthorityForm[] {
  return db.select().from(forms).where(eq(forms.id, formId)).orderBy(desc(forms.version)).all();
}

export function insertFormVersion(db: Db, form: AuthorityForm): void {
  db.insert(forms)
    .values(form as typeof forms.$inferInsert)
    .run();
}

/** What keeps the parts of a form from being stored, and where; null where nothing does. */
export function wrongFormPart({
  fields,
  mappings,
}: AuthorityForm): { readonly path: string; readonly message: string } | null {
  const looked = [
    ["fields", FieldsShape.safeParse(fields)],
    ["mappings", MappingsShape.safeParse(mappings)],
  ] as const;
  for (const [name, { error }] of looked) {
    const [issue] = error?.issues ?? [];
    if (issue !== undefined)
      return { path: [name, ...issue.path].join("."), message: issue.message };
  }
  return null;
}
