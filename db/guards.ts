// What counts as proof is kept as it was written: the database itself refuses to change or remove
// it, whoever asks. Triggers do it, made from this list and brought up to date at every opening, so
// that a table that is built anew does not lose them.

/** A trigger as the database keeps it. */
export interface Guard {
  readonly name: string;
  readonly sql: string;
}

interface Kept {
  /** Rows are kept from the start, or from when this holds of them (SQL on `OLD`). */
  readonly since?: string;
  /** What may not change; none: nothing of the row may. */
  readonly columns?: readonly string[];
  /** May be filled in once, and then stays. */
  readonly once?: readonly string[];
  /** Any further change that is refused (SQL on `OLD` and `NEW`). */
  readonly neither?: string;
  /** The row may be taken out in its own way. */
  readonly removable?: true;
  /** Sets of columns of which no second row may have the same; an insert can't replace a row then. */
  readonly keys: readonly (readonly string[])[];
  /** Said by the error. */
  readonly words: string;
}

const ROW = ["line_id", "id"] as const;

/** An outcome, its day and its proof are corrected only with a word more on the delivery. */
const UNEXPLAINED = `OLD.outcome <> 'on-its-way'
	AND (NEW.outcome IS NOT OLD.outcome OR NEW.outcome_on IS NOT OLD.outcome_on
		OR (OLD.proof_upload_id IS NOT NULL AND NEW.proof_upload_id IS NOT OLD.proof_upload_id))
	AND NOT (length(NEW.note) > length(OLD.note) AND substr(NEW.note, 1, length(OLD.note)) = OLD.note)`;

/** Of a word that was signed on screen the note stays too: it says as what somebody signed. */
const SIGNED_WORD = `NEW.note IS NOT OLD.note
	AND EXISTS (SELECT 1 FROM signatures WHERE line_id = OLD.line_id AND consent_id = OLD.id)`;

const KEPT: Readonly<Record<string, Kept>> = {
  history: { keys: [["position"], ROW], words: "the history is append-only" },
  ledger_entries: {
    keys: [ROW, ["line_id", "number"], ["line_id", "reverses_id"]],
    words: "the ledger is append-only",
  },
  signatures: { keys: [ROW, ["line_id", "consent_id"]], words: "signatures are append-only" },
  wordings: {
    keys: [["position"], ["kind", "language", "version"]],
    words: "versions of a wording are append-only",
  },
  wording_uses: { keys: [["position"]], words: "which wording was in use is append-only" },
  link_visits: { keys: [["position"]], words: "the visits of links are append-only" },
  sign_ins: { keys: [["position"]], words: "the log of sign-ins is append-only" },
  permit_steps: { keys: [ROW], words: "the steps of permits are append-only" },
  agreement_steps: { keys: [ROW], words: "the steps of agreements are append-only" },
  consents: {
    columns: [
      ...ROW,
      "position",
      "kind",
      "party_id",
      "property_id",
      "state",
      "state_on",
      "split_id",
      "rests_on_id",
      "entered_by",
    ],
    once: ["amount_cents", "recording_number", "upload_id"],
    neither: SIGNED_WORD,
    keys: [ROW],
    words: "what a person consented to stays as it was recorded",
  },
  replies: {
    columns: [
      ...ROW,
      "position",
      "notice_id",
      "entry_id",
      "kind",
      "received_on",
      "taken_by",
      "words",
      "suits_on",
      "upload_id",
    ],
    keys: [ROW],
    words: "an answer stays as it came",
  },
  roll_call: { keys: [ROW], words: "the roll-call is append-only" },
  meeting_words: { keys: [ROW], words: "what a meeting’s sheet says is append-only" },
  household_calls: { keys: [ROW], words: "calls to households are append-only" },
  notices: {
    since: "OLD.state = 'sent'",
    columns: [
      ...ROW,
      "kind",
      "party_id",
      "property_id",
      "tie_in_id",
      "split_id",
      "language",
      "also_in",
      "state",
      "created_on",
      "created_by",
      "reply_by",
      "own_words",
      "frozen_json",
      "frozen_hash",
      "sent_at",
      "paper_id",
    ],
    once: ["upload_id"],
    keys: [ROW],
    words: "a letter that was sent stays as it was sent",
  },
  deliveries: {
    columns: [...ROW, "notice_id", "method", "sent_on", "by", "at", "place", "handed_to"],
    once: ["declared_upload_id"],
    neither: UNEXPLAINED,
    keys: [ROW],
    words: "what became of a delivery is only corrected with a reason",
  },
  splits: {
    columns: [
      ...ROW,
      "number",
      "rule",
      "fault_station_cft",
      "payer_id",
      "unknown_shares",
      "reason",
      "chosen_by",
      "chosen_on",
      "total_cents",
      "shares_json",
      "basis",
      "option_id",
    ],
    once: ["sent_at"],
    keys: [ROW, ["line_id", "number"]],
    words: "a version of the split stays as it was chosen",
  },
  waivers: {
    columns: [...ROW, "hold_key", "reason", "by", "on"],
    removable: true,
    keys: [ROW, ["line_id", "hold_key"]],
    words: "a waiver stays as it was given",
  },
  paper_waivers: {
    columns: [...ROW, "paper_id", "party_id", "property_id", "given_up", "reason", "by", "on"],
    keys: [ROW],
    words: "a decision on a statutory paper stays as it was made",
  },
  uploads: {
    columns: [...ROW, "name", "type", "bytes", "sha256", "added_by", "added_at"],
    keys: [ROW, ["id"]],
    words: "a stored file stays as it came in",
  },
  forms: {
    removable: true,
    keys: [["id", "version"]],
    words: "a version of a form stays as it was saved",
  },
  links: {
    columns: [
      "id",
      "line_id",
      "notice_id",
      "party_id",
      "token_hash",
      "created_by",
      "created_at",
      "expires_at",
    ],
    once: ["revoked_at"],
    keys: [["id"], ["token_hash"]],
    words: "a private link stays as it was made",
  },
};

const SUFFIX = { change: "_kept_change", removal: "_kept_removal", key: "_kept_key" } as const;
const CHAIN = "signatures_kept_chain";

/** Before the first signature on a line: 64 zeros. */
const START = "0".repeat(64);

/** A signature goes to the end of its line's chain, or nowhere. */
const CHAIN_GUARD: Guard = guard(
  CHAIN,
  `BEFORE INSERT ON signatures
WHEN NEW.previous_hash IS NOT coalesce((SELECT hash FROM signatures WHERE line_id = NEW.line_id ORDER BY position DESC LIMIT 1), '${START}')
	OR EXISTS (SELECT 1 FROM signatures WHERE line_id = NEW.line_id AND position >= NEW.position)`,
  "a signature follows the one before it",
);

/** The triggers that keep what counts as proof. */
export function guards(): Guard[] {
  return [...Object.entries(KEPT).flatMap(([table, kept]) => guardsOf(table, kept)), CHAIN_GUARD];
}

/** Whether a trigger of this name is one of them, or was in an earlier version. */
export function isGuard(name: string): boolean {
  return name === CHAIN || Object.values(SUFFIX).some((suffix) => name.endsWith(suffix));
}

function guardsOf(table: string, kept: Kept): Guard[] {
  const since = kept.since === undefined ? "" : `\nWHEN ${kept.since}`;
  const key = kept.keys.map((columns) => alreadyThere(table, columns)).join("\n\tOR ");
  return [
    changeGuard(table, kept),
    ...(kept.removable
      ? []
      : [guard(table + SUFFIX.removal, `BEFORE DELETE ON \`${table}\`${since}`, kept.words)]),
    guard(table + SUFFIX.key, `BEFORE INSERT ON \`${table}\`\nWHEN ${key}`, kept.words),
  ];
}

function changeGuard(table: string, { columns, once = [], neither, since, words }: Kept): Guard {
  const name = table + SUFFIX.change;
  if (columns === undefined) return guard(name, `BEFORE UPDATE ON \`${table}\``, words);
  const changed = [
    ...columns.map((column) => `NEW.\`${column}\` IS NOT OLD.\`${column}\``),
    ...once.map(
      (column) =>
        `(coalesce(OLD.\`${column}\`, '') <> '' AND NEW.\`${column}\` IS NOT OLD.\`${column}\`)`,
    ),
    ...(neither === undefined ? [] : [`(${neither})`]),
  ].join("\n\tOR ");
  const when = since === undefined ? changed : `${since} AND (${changed})`;
  return guard(name, `BEFORE UPDATE ON \`${table}\`\nWHEN ${when}`, words);
}

function alreadyThere(table: string, columns: readonly string[]): string {
  const same = columns.map((column) => `\`${column}\` = NEW.\`${column}\``).join(" AND ");
  return `EXISTS (SELECT 1 FROM \`${table}\` WHERE ${same})`;
}

function guard(name: string, when: string, words: string): Guard {
  return {
    name,
    sql: `CREATE TRIGGER \`${name}\` ${when}\nBEGIN\n\tSELECT RAISE(ABORT, '${words}');\nEND`,
  };
}
