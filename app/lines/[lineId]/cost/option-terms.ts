import type { ChangeOrderState } from "#lib/domain/facts/change-order.ts";
import type { OptionKind } from "#lib/domain/facts/work-option.ts";

export const OPTION_WORDS: Record<OptionKind, string> = {
  "spot-repair": "spot repair",
  lining: "lining",
  bursting: "pipe bursting",
  "full-replacement": "full replacement",
  "separate-lines": "separate lines",
  other: "other",
};

export const ORDER_STATE_WORDS: Record<ChangeOrderState, string> = {
  proposed: "pending",
  agreed: "approved",
  refused: "rejected",
};
