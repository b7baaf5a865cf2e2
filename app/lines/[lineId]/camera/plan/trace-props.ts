import type { PlanPicture, PlanShape, Spot } from "#lib/domain/facts/plan.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";

/** What tracing needs of a line's file. */
export interface TraceProps {
  readonly lineId: string;
  readonly pictures: readonly PlanPicture[];
  readonly picturesBase: number;
  readonly shapes: readonly PlanShape[];
  readonly shapesBase: number;
  /** The stored files that are PNG or JPEG. */
  readonly uploads: readonly Pick<Upload, "id" | "name">[];
  readonly properties: readonly { readonly value: string; readonly label: string }[];
  /** The line as bearing and bends lay it; null: not known. */
  readonly line: readonly Spot[] | null;
}
