import { createHash } from "node:crypto";
import { z } from "zod";
import { FORM_PARTS } from "#db/queries/form.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { type AuthorityForm, DAY_MANNERS } from "#lib/domain/facts/form.ts";
import { PERMIT_KINDS } from "#lib/domain/facts/permit.ts";
import { withOwnParts } from "#lib/domain/responsibility/own-parts.ts";
import { type FileProblem, parseJson, problemsOf } from "#lib/exchange/line-file.ts";
import { authorityShape } from "#lib/exchange/shape.ts";
import { err, ok, type Result } from "#lib/result.ts";

// The authority file: one authority with its rules, fees, requirements, clocks, holidays, proof rules
// and papers, and the forms in use with the bytes of their PDFs as base64. Nothing of any line.

const KIND = "wyebook-authority";
const VERSION = 1;

/** A form as it travels: whose it is, its version and who saved it are the office's that takes it in. */
type CarriedForm = Omit<AuthorityForm, "authorityId" | "version" | "savedBy" | "savedAt">;

export interface AuthorityFile {
  readonly authority: Authority;
  readonly forms: readonly { readonly form: CarriedForm; readonly content: Uint8Array }[];
}

const words = z.string().max(2_000);
const FormShape = z.strictObject({
  id: z
    .string()
    .regex(/^[A-Za-z0-9_-]{1,64}$/, "An id is 1 to 64 letters, digits, hyphens and underscores"),
  title: words.min(1, "A form needs a title"),
  permitKind: z.enum(PERMIT_KINDS),
  requirementId: z.string().nullable().default(null),
  fileName: words,
  sha256: z.string(),
  bytes: z.int(),
  pages: FORM_PARTS.pages,
  fields: FORM_PARTS.fields,
  notes: FORM_PARTS.notes.default([]),
  mappings: FORM_PARTS.mappings,
  days: z.enum(DAY_MANNERS),
  flatten: z.boolean().default(false),
  retired: z.boolean().default(false),
  content: z.base64("The PDF has to be in base64"),
});

const FileShape = z.strictObject({
  kind: z.literal(KIND, "This is not an authority file"),
  version: z.literal(VERSION, `This program reads version ${VERSION} of authority files`),
  authority: authorityShape("exchange"),
  forms: FormShape.array().max(100).default([]),
});

/** The file of an authority, the same for the same facts. */
export function writeAuthorityFile({ authority, forms }: AuthorityFile): string {
  const file = {
    kind: KIND,
    version: VERSION,
    authority: z.encode(authorityShape("exchange"), authority),
    forms: forms.map(({ form, content }) => ({
      ...form,
      content: Buffer.from(content).toString("base64"),
    })),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Reads an authority file; says what is wrong with its path, and takes nothing that is. */
export function readAuthorityFile(text: string): Result<AuthorityFile, readonly FileProblem[]> {
  const json = parseJson(text);
  if (!json.ok) return json;
  const parsed = FileShape.safeParse(json.value);
  if (!parsed.success) return err(problemsOf(parsed.error));
  const forms = parsed.data.forms.map(({ content, ...form }) => ({
    form: form as CarriedForm,
    content: new Uint8Array(Buffer.from(content, "base64")),
  }));
  const wrong = forms.flatMap(({ form, content }, at): FileProblem[] => {
    const hash = createHash("sha256").update(content).digest("hex");
    return hash === form.sha256 && content.length === form.bytes
      ? []
      : [
          {
            path: `forms.${at}.content`,
            reason: `The PDF of “${form.title}” is not the one that was exported`,
          },
        ];
  });
  if (wrong.length > 0) return err(wrong);
  return ok({ authority: withOwnParts(parsed.data.authority), forms });
}
