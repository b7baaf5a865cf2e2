// A process of its own that reads forms of authorities and fills them in; forms-apart.ts asks it.
import { workApart } from "#lib/apart/work-apart.ts";
import type { Result } from "#lib/result.ts";
import { type FilledForm, fillForm } from "./fill-form.ts";
import type { FormTask } from "./forms-apart.ts";
import { type ReadForm, readForm } from "./read-form.ts";

workApart(
  async ({ bytes, fill }: FormTask): Promise<Result<ReadForm | FilledForm, string>> =>
    fill === null ? await readForm(bytes) : await fillForm(bytes, fill),
);
