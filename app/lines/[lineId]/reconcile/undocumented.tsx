import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { FITTING_WORDS, MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import type { EvidenceLevel } from "#lib/domain/facts/test.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { repeated, type TestToRepeat, testToRepeat } from "#lib/domain/testing/next-test.ts";
import { provenSettlement } from "#lib/domain/tiein/settlement.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { TIE_IN_KIND_WORDS } from "../field-terms.ts";
import { propertyName } from "../names.ts";
import type { LinePart } from "../part.ts";
import { QuickRow } from "../quick-row.tsx";
import { optionsOf } from "../terms.ts";
import { propertyChoices } from "../who/columns.ts";
import { addTestAction, settleAction } from "./actions.ts";
import { Candidates } from "./candidates.tsx";
import { placeWords } from "./pairings-view.ts";
import { ReasonField } from "./reason-field.tsx";
import { SETTLE_REASONS, SHOWN_REASONS } from "./reasons.ts";
import styles from "./reconcile.module.css";
import { Rulings } from "./rulings.tsx";
import { TEST_BLANK, testColumns } from "./test-columns.ts";

/** Tie-ins that are on no record: whose they may be, what was tested, and what settles them. */
export function Undocumented(part: LinePart) {
  const undocumented = part.report.tieIns.filter((each) => needsEvidence(each));
  const others = part.report.tieIns.filter((each) => !needsEvidence(each));
  return (
    <>
      {undocumented.length === 0 ? null : (
        <Section
          title="On no record"
          id="undocumented"
          actions={
            <Link href={`/lines/${part.lineId}/reconcile/test-day`}>Plan a day of dye tests</Link>
          }
          note="Never cap or line over a branch before it is proven dead: somebody unseen may live on it. Nobody is asked for money before level 5, or before they accept the tie-in themselves."
        >
          <div className="stack-wide">
            {undocumented.map((finding) => (
              <UndocumentedTieIn key={finding.tieIn.id} finding={finding} {...part} />
            ))}
          </div>
        </Section>
      )}
      {others.length === 0 || !part.mayFile ? null : <SettleAnother others={others} {...part} />}
    </>
  );
}

function needsEvidence({ standing, tieIn }: TieInFinding): boolean {
  return (
    standing === "undocumented" ||
    standing === "accepted-by-ruling" ||
    (tieIn.settledOn !== null && standing !== "on-record-and-seen")
  );
}

type TieInProps = LinePart & { readonly finding: TieInFinding };

function UndocumentedTieIn({ finding, ...part }: TieInProps) {
  const { tieIn } = finding;
  return (
    <article
      className={`${styles["tie-in"]} ${isQuiet(finding) ? styles["settled"] : ""}`}
      aria-label={`Tie-in ${tieIn.label}`}
    >
      <div>
        <h3>
          <SelectOnStrip id={tieIn.id}>{tieIn.label}</SelectOnStrip> {placeWords(finding)}
        </h3>
        <p>{finding.sentence}</p>
        <p className="muted">{looksWords(finding)}</p>
      </div>
      <div className="pair">
        <Ladder finding={finding} />
        <Candidates finding={finding} {...part} />
      </div>
      <Tests heading="h4" finding={finding} {...part} />
      <Settled finding={finding} {...part} />
      {part.mayFile ? <SettleForm finding={finding} {...part} /> : null}
      <Rulings finding={finding} {...part} />
    </article>
  );
}

/** Documented, or carrying nothing: no longer loud. */
function isQuiet({ standing, live }: TieInFinding): boolean {
  return standing === "accepted-by-ruling" || !live;
}

function looksWords({ tieIn }: TieInFinding): string {
  const parts = [
    tieIn.diameter === null ? "size not noted" : `${tieIn.diameter} in`,
    MATERIAL_WORDS[tieIn.material],
    tieIn.fitting === "unknown" ? "fitting not noted" : FITTING_WORDS[tieIn.fitting],
  ];
  return `${parts.join(", ")}.`;
}

const LEVELS: readonly { readonly level: EvidenceLevel; readonly words: string }[] = [
  { level: 0, words: "unknown" },
  { level: 1, words: "plausible by where it lies: enough to write and ask" },
  { level: 2, words: "a record or a statement names a property" },
  { level: 3, words: "a trace or smoke points at a property" },
  { level: 4, words: "dye or flow seen once, by one witness" },
  {
    level: 5,
    words:
      "dye seen twice, filmed, other water off, two people, nothing from a control address: enough to ask for money",
  },
  { level: 6, words: "dug up and seen, or accepted in writing by its owner or the authority" },
];

function Ladder({ finding }: { readonly finding: TieInFinding }) {
  return (
    <div className="stack-tight">
      <h4>How sure: level {finding.level} of 6</h4>
      <p>{finding.levelReason}</p>
      <ol className={styles["ladder"]}>
        {LEVELS.toReversed().map(({ level, words }) => (
          <li key={level} aria-current={level === finding.level ? "step" : undefined}>
            <span>{level}</span>
            <span>{words}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}

function Tests({
  heading: Heading,
  finding,
  lineId,
  file,
  report,
  revisions,
  mayRecord,
}: TieInProps & { readonly heading: "h3" | "h4" }) {
  const { tieIn } = finding;
  const columns = testColumns(file);
  const blank = { ...TEST_BLANK, performedOn: report.today };
  return (
    <div className="stack-tight">
      <Heading>Tests on {tieIn.label}</Heading>
      {mayRecord ? (
        <RepeatTest
          lineId={lineId}
          columns={columns}
          name={tieIn.label}
          again={testToRepeat(file.tests, tieIn.id)}
          at={(id) => propertyName(file, id)}
          today={report.today}
        />
      ) : null}
      {mayRecord ? (
        <QuickRow
          title={`Add a test on ${tieIn.label}`}
          action={addTestAction.bind(null, lineId, tieIn.id)}
          columns={columns}
          first={["performedOn", "kind", "propertyId", "fixture", "result", "otherWaterBarred"]}
          blank={blank}
        />
      ) : null}
      <RowsGrid
        lineId={lineId}
        table="tests"
        where={{ tieInId: tieIn.id }}
        base={revisions.tests}
        rows={file.tests}
        columns={columns}
        blank={blank}
        addWord="test"
        emptyWords="No test yet. One row for each address that is tried, also where nothing was seen."
        label={`Tests on ${tieIn.label}`}
        readOnly={!mayRecord}
      />
    </div>
  );
}

/** The dye test that is missing for proof, filled in as the last one was: what was seen is all to add. */
function RepeatTest({
  lineId,
  columns,
  name,
  again,
  at,
  today,
}: {
  readonly lineId: string;
  readonly columns: readonly GridColumn[];
  readonly name: string;
  readonly again: TestToRepeat | null;
  readonly at: (propertyId: string | null) => string;
  readonly today: string;
}) {
  if (again === null) return null;
  const { tieInId, ...row } = repeated(again, today);
  const place = at(again.last.propertyId);
  return (
    <details className="screen-only">
      <summary>
        {again.seen === 1 ? "Record the second dye test" : "Record the dye test once more"} at{" "}
        {place}
      </summary>
      <p className="muted">Missing for proof: {again.missing.join(", ")}.</p>
      <QuickRow
        everywhere
        title={`Dye test at ${place}, watched at ${name}`}
        action={addTestAction.bind(null, lineId, tieInId)}
        columns={columns}
        first={[
          "performedOn",
          "result",
          "startedAt",
          "firstSeenAt",
          "filmed",
          "dosedBy",
          "watchedBy",
          "otherWaterBarred",
          "controlPropertyId",
          "controlResult",
        ]}
        blank={{ ...row }}
      />
    </details>
  );
}

function Settled({ finding: { tieIn }, file, report }: TieInProps) {
  if (tieIn.settledOn === null) return null;
  const whose = tieIn.propertyId === null ? "" : `, of ${propertyName(file, tieIn.propertyId)}`;
  const dead = tieIn.inactive ? ", proven dead" : "";
  const accepted = tieIn.ownerAccepted ? " The owner accepted it in writing." : "";
  return (
    <p>
      <span className="tag tag-done">settled</span> {TIE_IN_KIND_WORDS[tieIn.kind]}
      {whose}
      {dead}, says {tieIn.settledBy}, {formatDay(tieIn.settledOn, report.today)}:{" "}
      {tieIn.settledReason}.{accepted}
    </p>
  );
}

/** Filled in with what tests have proven, for a person to settle. */
function SettleForm({ finding, lineId, file }: TieInProps) {
  const { tieIn } = finding;
  const proven = provenSettlement(finding, file.tests);
  return (
    <details open={proven !== null}>
      <summary>
        {tieIn.settledOn === null ? "Settle what it is and whose" : "Settle it otherwise"}
        <span className="hidden">: {tieIn.label}</span>
      </summary>
      <ActionForm
        action={settleAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`Settle ${tieIn.label}`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <Choice
          label="It carries"
          name="kind"
          options={optionsOf(TIE_IN_KIND_WORDS)}
          defaultValue={proven?.kind ?? tieIn.kind}
        />
        <Choice
          label="It belongs to"
          name="propertyId"
          options={[{ value: "", label: "nobody known" }, ...propertyChoices(file)]}
          defaultValue={proven?.propertyId ?? tieIn.propertyId ?? ""}
        />
        <Tick
          label="Proven dead: nothing can come through it"
          name="inactive"
          defaultChecked={tieIn.inactive}
        />
        <Tick
          label="Its owner accepted in writing that it is theirs"
          name="ownerAccepted"
          defaultChecked={tieIn.ownerAccepted}
        />
        <ReasonField
          presets={SETTLE_REASONS}
          chosen={proven === null ? "" : SHOWN_REASONS[proven.shownBy]}
          label="What shows it"
        />
        <div>
          <SubmitButton pendingWord="Saving …">Settle {tieIn.label}</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

/** Tests and findings on tie-ins that are on record: to prove one dead, say. */
function SettleAnother({
  others,
  ...part
}: LinePart & { readonly others: readonly TieInFinding[] }) {
  return (
    <Section
      title="Tests on the others"
      note="A tie-in on record may be dead, or a drain, too; or a test may have to confirm it."
    >
      {others.map((finding) => (
        <details key={finding.tieIn.id}>
          <summary>
            {finding.tieIn.label}, {placeWords(finding)}
          </summary>
          <div className="stack">
            <Tests heading="h3" finding={finding} {...part} />
            <Settled finding={finding} {...part} />
            <SettleForm finding={finding} {...part} />
          </div>
        </details>
      ))}
    </Section>
  );
}
