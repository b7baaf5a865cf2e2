import type { AuthorityForm } from "../facts/form.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";

/** What a packet is put together from. */
export interface PacketInput {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  /** The authority's own forms; none where they play no part. */
  readonly forms?: readonly AuthorityForm[];
}

/** Whether the facts for a sheet are complete, and what is wanting. */
export interface SheetState {
  readonly complete: boolean;
  /** Sentences: what is there, or each thing that is wanting. */
  readonly sentences: readonly string[];
}
