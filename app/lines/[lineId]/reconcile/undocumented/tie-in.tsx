import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Fold } from "#app/_components/fold.client.tsx";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { FITTING_WORDS, MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { repeated, type TestToRepeat, testToRepeat } from "#lib/domain/testing/next-test.ts";
import { LEVEL_WORDS } from "#lib/domain/tiein/level-words.ts";
import { provenSettlement } from "#lib/domain/tiein/settlement.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { settledSeen } from "#lib/operations/settle-tie-in.ts";
import { TIE_IN_KIND_WORDS } from "../../field-terms.ts";
import { LineGrid } from "../../line-grid.tsx";
import { propertyName } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { QuickRow } from "../../quick-row.tsx";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";
import { addTestAction, settleAction } from "../actions.ts";
import { placeWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { SETTLE_REASONS, SHOWN_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { Candidates } from "./candidates.tsx";
import { FEW, Others, opened, pathOf, type TieInQuery } from "./opened.tsx";
import { isAnswered, needsEvidence } from "./questions.ts";
import { Rulings } from "./rulings.tsx";
import { TEST_BLANK, testColumns } from "./test-columns.ts";

/** So many tie-ins to find out about, with tests, candidates and forms, stand on a page. */
const AT_ONCE = 4;

/** Tie-ins not on record with work left: whose they may be, what was tested, and what settles them. */
export function Undocumented({ asked, ...part }: LinePart & { readonly asked: TieInQuery }) {
  const open = part.report.tieIns.filter((each) => needsEvidence(each) && !isAnswered(each));
  const from = pageFrom(asked.page, AT_ONCE);
  if (open.length === 0) return null;
  return (
    <Section
      title="Not on record"
      id="undocumented"
      note="Never cap or line over a branch until it is proven inactive: someone may depend on it."
    >
      <div className="stack-wide">
        {onPage(open, from, AT_ONCE).map((finding, at) => (
          <UndocumentedTieIn key={finding.tieIn.id} finding={finding} first={at === 0} {...part} />
        ))}
      </div>
      <Pages
        from={from}
        most={AT_ONCE}
        of={open.length}
        what="tie-ins"
        href={(page) => `${pathOf(part)}?page=${page}#undocumented`}
      />
    </Section>
  );
}

/** Tie-ins not on record of which a person has said what they are and whose. */
export function SettledTieIns({ asked, ...part }: LinePart & { readonly asked: TieInQuery }) {
  const settled = part.report.tieIns.filter((each) => needsEvidence(each) && isAnswered(each));
  if (settled.length === 0) return null;
  return (
    <Section
      title="Settled"
      id="settled"
      folded={settled.map(({ tieIn }) => tieIn.label).join(", ")}
    >
      <div className="stack-wide">
        {opened(settled, asked).map((finding) => (
          <UndocumentedTieIn key={finding.tieIn.id} finding={finding} {...part} />
        ))}
        <Others findings={settled} asked={asked} to="settled" {...part} />
      </div>
    </Section>
  );
}

type TieInProps = LinePart & { readonly finding: TieInFinding };

/** On a phone the first alone is open: one tie-in at a time. */
function UndocumentedTieIn({
  finding,
  first = false,
  ...part
}: TieInProps & { readonly first?: boolean }) {
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
      <Fold onPhone bare opened={first} summary="Evidence, likely owners and tests">
        <div className="stack">
          {part.mayFile ? <SettleProven finding={finding} {...part} /> : null}
          <div className="pair">
            <div className="stack-tight">
              <Confidence finding={finding} />
              <Settled finding={finding} {...part} />
              <Rulings finding={finding} {...part} />
              {part.mayFile ? <SettleForm finding={finding} {...part} /> : null}
            </div>
            <Candidates finding={finding} {...part} />
          </div>
          <Tests heading="h4" finding={finding} {...part} />
        </div>
      </Fold>
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

/** How sure it is and why; what each level means is told once, at the foot of the page. */
function Confidence({ finding }: { readonly finding: TieInFinding }) {
  return (
    <div className="stack-tight">
      <h4>
        Confidence: level {finding.level} of 6{" "}
        <span className={styles["level"]}>({LEVEL_WORDS[finding.level]})</span>
      </h4>
      <p>{finding.levelReason}</p>
      <p className="screen-only small">
        <a href="#levels">What the levels mean</a>
      </p>
    </div>
  );
}

function Tests({
  heading: Heading,
  finding,
  lineId,
  file,
  report,

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
          action={addTestAction.bind(null, { lineId, tieInId: tieIn.id })}
          columns={columns}
          first={["performedOn", "kind", "propertyId", "fixture", "result", "otherWaterBarred"]}
          blank={blank}
        />
      ) : null}
      <LineGrid
        lineId={lineId}
        table="tests"
        where={{ tieInId: tieIn.id }}
        columns={columns}
        blank={blank}
        addWord="test"
        emptyWords="No test yet. One row per address tested, including those that did not show."
        label={`Tests on ${tieIn.label}`}
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
        {again.seen === 1 ? "Record the second dye test" : "Record the dye test again"} at {place}
      </summary>
      <p className="muted">Still needed for proof: {again.missing.join(", ")}.</p>
      <QuickRow
        everywhere
        title={`Dye test at ${place}, watched at ${name}`}
        action={addTestAction.bind(null, { lineId, tieInId })}
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
  const dead = tieIn.inactive ? ", proven inactive" : "";
  const accepted = tieIn.ownerAccepted ? " The owner accepted it in writing." : "";
  return (
    <p>
      <span className="tag tag-done">settled</span> {TIE_IN_KIND_WORDS[tieIn.kind]}
      {whose}
      {dead}; {tieIn.settledBy}, {formatDay(tieIn.settledOn, report.today)}: {tieIn.settledReason}.
      {accepted}
    </p>
  );
}

/** One press: what tests have proven is filled in, and a person confirms it in their name. */
function SettleProven({ finding, lineId, file }: TieInProps) {
  const { tieIn } = finding;
  const proven = provenSettlement(finding, file.tests);
  if (proven === null) return null;
  const what = `${TIE_IN_KIND_WORDS[proven.kind]} from ${propertyName(file, proven.propertyId)}`;
  const reason = SHOWN_REASONS[proven.shownBy];
  return (
    <ActionForm
      action={settleAction.bind(null, lineId)}
      className={`screen-only ${styles["all"]}`}
      label={`Settle ${tieIn.label} as tests show`}
    >
      <input type="hidden" name="tieInId" value={tieIn.id} />
      <SeenField value={seenOf(settledSeen(tieIn))} />
      <input type="hidden" name="kind" value={proven.kind} />
      <input type="hidden" name="propertyId" value={proven.propertyId} />
      <input type="hidden" name="reason" value={reason} />
      <p className={styles["wide"]}>
        <span className="strong">
          Tests show that {tieIn.label} carries {what}.
        </span>{" "}
        {reason}.
      </p>
      <div>
        <SubmitButton pendingWord="Saving …">Settle {tieIn.label} as shown</SubmitButton>
      </div>
    </ActionForm>
  );
}

function SettleForm({ finding, lineId, file }: TieInProps) {
  const { tieIn } = finding;
  const proven = provenSettlement(finding, file.tests);
  return (
    <details className="screen-only">
      <summary>
        {settleWords(tieIn.settledOn !== null || proven !== null)}
        <span className="hidden">: {tieIn.label}</span>
      </summary>
      <ActionForm
        action={settleAction.bind(null, lineId)}
        className={styles["across"] ?? ""}
        label={`Settle ${tieIn.label}`}
      >
        <input type="hidden" name="tieInId" value={tieIn.id} />
        <SeenField value={seenOf(settledSeen(tieIn))} />
        <Choice
          label="Carries"
          name="kind"
          options={optionsOf(TIE_IN_KIND_WORDS)}
          defaultValue={proven?.kind ?? tieIn.kind}
        />
        <Choice
          label="Owner"
          name="propertyId"
          options={[{ value: "", label: "unknown" }, ...propertyChoices(file)]}
          defaultValue={proven?.propertyId ?? tieIn.propertyId ?? ""}
        />
        <Tick
          label="Proven inactive: nothing can flow through it"
          name="inactive"
          defaultChecked={tieIn.inactive}
        />
        <Tick
          label="Owner accepted it in writing"
          name="ownerAccepted"
          defaultChecked={tieIn.ownerAccepted}
        />
        <ReasonField
          presets={SETTLE_REASONS}
          chosen={proven === null ? "" : SHOWN_REASONS[proven.shownBy]}
          label="Evidence"
        />
        <div>
          <SubmitButton quiet pendingWord="Saving …">
            Settle {tieIn.label}
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function settleWords(otherwise: boolean): string {
  return otherwise ? "Settle it another way" : "Settle what it carries and who owns it";
}

/** Tests and findings on tie-ins that are on record: to prove one inactive, say. */
export function OtherTests({ asked, ...part }: LinePart & { readonly asked: TieInQuery }) {
  const others = part.report.tieIns.filter((each) => !needsEvidence(each));
  if (others.length === 0 || !part.mayFile) return null;
  return (
    <Section
      title="Tests on other tie-ins"
      id="others"
      folded={others.map(({ tieIn }) => tieIn.label).join(", ")}
      note="A tie-in on record may also be inactive or a drain, or need a test to confirm it."
    >
      {opened(others, asked).map((finding) => (
        <details key={finding.tieIn.id} open={others.length > FEW}>
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
      <Others findings={others} asked={asked} to="others" {...part} />
    </Section>
  );
}
