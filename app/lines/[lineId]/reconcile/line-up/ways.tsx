import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { AlignmentDecision } from "#lib/domain/facts/alignment-decision.ts";
import type { Alignment } from "#lib/domain/findings/report.ts";
import type { Cft } from "#lib/domain/length/station.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { alignmentsSeen } from "#lib/operations/decide-alignment.ts";
import { seenOf } from "#lib/operations/seen.ts";
import type { LinePart } from "../../part.ts";
import stacked from "../../stacked.module.css";
import { alignAction, withdrawAlignmentAction } from "../actions.ts";
import { ReasonField } from "../reason-field.tsx";
import { LINE_UP_REASONS, NO_LINE_UP_REASONS, UNDO_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { isMoved, movedWords, setAside } from "./line-up-view.ts";

/** How the records lie on the camera's axis: what is proposed to decide, then what each way explains. */
export function LineUp(part: LinePart) {
  const { report, mayFile } = part;
  const { alignment } = report;
  if (alignment === null) return null;
  const open = [
    ...(alignment.decision === null && isMoved(alignment)
      ? [{ recordId: null, fit: alignment, name: "" }]
      : []),
    ...alignment.own
      .filter((own) => own.decision === null)
      .map((own) => ({
        recordId: own.recordId,
        fit: own,
        name: recordTitle(part, own.recordId),
      })),
  ];
  return (
    <>
      <Section title="Where the record fits" id="line-up">
        {mayFile
          ? open.map((each) => <DecideFit key={each.recordId ?? ""} {...each} {...part} />)
          : null}
        <Ways alignment={alignment} {...part} />
        {mayFile ? <OtherFit {...part} /> : null}
      </Section>
      <Rejected {...part} />
    </>
  );
}

function recordTitle({ file }: LinePart, recordId: string | null): string {
  return file.records.find((record) => record.id === recordId)?.title || "one record";
}

interface Way {
  readonly key: string;
  readonly name: string;
  readonly moved: string;
  readonly agree: string;
  readonly decision: AlignmentDecision | null;
}

function waysOf(alignment: Alignment, part: LinePart): Way[] {
  const { decision, own, proposed, plain } = alignment;
  const of = (count: number, all = alignment.of) => `${count} of ${all}`;
  const aside = setAside(alignment);
  const way = (key: string, rest: Omit<Way, "key" | "decision">): Way => ({
    key,
    decision: null,
    ...rest,
  });
  const written = way("written", { name: "As recorded", moved: "no shift", agree: of(plain) });
  const search = way("search", {
    name: aside === null ? "Proposed" : "Best fit found",
    moved: movedWords(proposed),
    agree: of(proposed.explained),
  });
  const searched = decision === null ? isMoved(alignment) : aside !== null;
  return [
    written,
    ...(searched ? [search] : []),
    ...(decision === null
      ? []
      : [
          {
            ...way("accepted", {
              name: "Accepted",
              moved: movedWords(alignment),
              agree: of(alignment.explained),
            }),
            decision,
          },
        ]),
    ...own.map((each) => ({
      ...way(each.recordId, {
        name: `${recordTitle(part, each.recordId)}, by itself`,
        moved: movedWords(each),
        agree: of(each.explained, each.of),
      }),
      decision: each.decision,
    })),
  ];
}

function Ways({ alignment, ...part }: LinePart & { readonly alignment: Alignment }) {
  const ways = waysOf(alignment, part);
  return (
    <Scroll>
      <table className={`plain ${stacked["stacked"]}`}>
        <Heads of={["Record as", "Shifted", "Matching entries", "Decided"]} />
        <tbody>
          {ways.map((way) => (
            <tr key={way.key}>
              <th scope="row">{way.name}</th>
              <td data-title="Shifted:">{way.moved}</td>
              <td data-title="Match:">{way.agree}</td>
              <td>
                {way.decision === null ? (
                  <span className="muted">
                    {way.key === "written" || alignment.decision !== null ? "" : "not decided yet"}
                  </span>
                ) : (
                  <DecisionCell decision={way.decision} {...part} />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function DecisionCell({
  decision,
  lineId,
  report,
  mayFile,
}: LinePart & { readonly decision: AlignmentDecision }) {
  return (
    <>
      <p>
        {STATE_WORDS[decision.state]} by {decision.decidedBy},{" "}
        {formatDay(decision.decidedOn, report.today)}: {decision.reason}
      </p>
      {mayFile ? (
        <details className="screen-only">
          <summary>
            Undo
            <span className="hidden">
              : {movedWords(decision)} ({STATE_WORDS[decision.state]})
            </span>
          </summary>
          <ActionForm
            action={withdrawAlignmentAction.bind(null, lineId)}
            className={styles["decide"] ?? ""}
            label="Undo how they line up"
          >
            <input type="hidden" name="alignmentId" value={decision.id} />
            <ReasonField presets={UNDO_REASONS} />
            <div>
              <SubmitButton quiet pendingWord="Undoing …">
                Undo
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}

const STATE_WORDS: Record<AlignmentDecision["state"], string> = {
  accepted: "accepted",
  refused: "rejected",
};

interface Deciding {
  readonly recordId: string | null;
  readonly fit: { readonly shift: Cft; readonly scale: number };
  readonly name: string;
}

function FitInputs({ recordId, fit }: Omit<Deciding, "name">) {
  return (
    <>
      <input type="hidden" name="recordId" value={recordId ?? ""} />
      <input type="hidden" name="shift" value={fit.shift} />
      <input type="hidden" name="scale" value={fit.scale} />
    </>
  );
}

function DecideFit({ lineId, file, recordId, fit, name }: LinePart & Deciding) {
  const what = `${name === "" ? "" : `${name}: `}${movedWords(fit)}`;
  const decide = alignAction.bind(null, lineId);
  return (
    <div className={`screen-only ${styles["proposed"]}`}>
      <p>
        <span className="strong">{capital(what)}?</span>{" "}
        <span className="muted">The matches depend on it.</span>
      </p>
      <ActionForm action={decide} className={styles["across"] ?? ""} label={`Accept ${what}`}>
        <SeenField value={seenOf(alignmentsSeen(file))} />
        <FitInputs recordId={recordId} fit={fit} />
        <input type="hidden" name="state" value="accepted" />
        <ReasonField presets={LINE_UP_REASONS} />
        <div>
          <SubmitButton pendingWord="Accepting …">
            Accept<span className="hidden"> {what}</span>
          </SubmitButton>
        </div>
      </ActionForm>
      <details>
        <summary>
          Not a match<span className="hidden">: {what}</span>
        </summary>
        <ActionForm action={decide} className={styles["decide"] ?? ""} label={`Reject ${what}`}>
          <SeenField value={seenOf(alignmentsSeen(file))} />
          <FitInputs recordId={recordId} fit={fit} />
          <input type="hidden" name="state" value="refused" />
          <ReasonField presets={NO_LINE_UP_REASONS} />
          <div>
            <SubmitButton quiet pendingWord="Rejecting …">
              Reject
            </SubmitButton>
          </div>
        </ActionForm>
      </details>
    </div>
  );
}

/** A zero and scale that the person knows from elsewhere; none at all is a word too. */
function OtherFit({ lineId, file }: LinePart) {
  return (
    <details className="screen-only">
      <summary>Set the shift yourself</summary>
      <ActionForm
        action={alignAction.bind(null, lineId)}
        className={styles["across"] ?? ""}
        label="Custom zero or scale"
      >
        <SeenField value={seenOf(alignmentsSeen(file))} />
        <input type="hidden" name="state" value="accepted" />
        <input type="hidden" name="typed" value="yes" />
        <Field
          label="Shift upstream (ft)"
          name="shift"
          hint="−2.4 for downstream; 0 for as recorded"
        />
        <Field label="Lengthen (%)" name="scale" hint="−1.5 if the record reads long" />
        {file.records.length > 1 ? (
          <Choice
            label="Which record"
            name="recordId"
            options={[
              { value: "", label: "all records" },
              ...file.records.map((record) => ({
                value: record.id,
                label: record.title || record.number,
              })),
            ]}
          />
        ) : (
          <input type="hidden" name="recordId" value="" />
        )}
        <ReasonField presets={LINE_UP_REASONS} />
        <div>
          <SubmitButton quiet pendingWord="Saving …">
            Accept this shift
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function Rejected(part: LinePart) {
  const rejected = part.file.alignments.filter((each) => each.state === "refused");
  if (rejected.length === 0) return null;
  return (
    <Section title="Rejected earlier; not proposed again" folded={`${rejected.length}`}>
      <ul className={styles["plain"]}>
        {rejected.map((decision) => (
          <li key={decision.id}>
            <p className="strong">
              {decision.recordId === null ? "" : `${recordTitle(part, decision.recordId)}: `}
              {movedWords(decision)}
            </p>
            <DecisionCell decision={decision} {...part} />
          </li>
        ))}
      </ul>
    </Section>
  );
}
