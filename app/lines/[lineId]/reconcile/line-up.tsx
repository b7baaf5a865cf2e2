import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { AlignmentDecision } from "#lib/domain/facts/alignment-decision.ts";
import type { Alignment } from "#lib/domain/findings/report.ts";
import type { Cft } from "#lib/domain/length/station.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import type { LinePart } from "../part.ts";
import stacked from "../stacked.module.css";
import { alignAction, withdrawAlignmentAction } from "./actions.ts";
import { isMoved, movedWords, setAside } from "./line-up-view.ts";
import { ReasonField } from "./reason-field.tsx";
import { LINE_UP_REASONS, NO_LINE_UP_REASONS, UNDO_REASONS } from "./reasons.ts";
import styles from "./reconcile.module.css";

/** How the records lie on the camera's axis: proposed or decided, and what each way explains. */
export function LineUp(part: LinePart) {
  const { report, mayFile } = part;
  const { alignment } = report;
  if (alignment === null) return null;
  return (
    <Section title="How they line up" id="line-up" note={alignment.sentence}>
      <Ways alignment={alignment} {...part} />
      {mayFile ? (
        <div className={`screen-only ${styles["line-up"]}`}>
          {alignment.decision === null && isMoved(alignment) ? (
            <DecideFit recordId={null} fit={alignment} name="" {...part} />
          ) : null}
          {alignment.own
            .filter((own) => own.decision === null)
            .map((own) => (
              <DecideFit
                key={own.recordId}
                recordId={own.recordId}
                fit={own}
                name={recordTitle(part, own.recordId)}
                {...part}
              />
            ))}
          <OtherFit {...part} />
        </div>
      ) : null}
      <Refused {...part} />
    </Section>
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
  const written = way("written", { name: "As written", moved: "not moved", agree: of(plain) });
  const search = way("search", {
    name: aside === null ? "Proposed" : "Found by searching",
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
        <thead>
          <tr>
            <th scope="col">Taking the record</th>
            <th scope="col">Moved</th>
            <th scope="col">Entries that agree</th>
            <th scope="col">Decided</th>
          </tr>
        </thead>
        <tbody>
          {ways.map((way) => (
            <tr key={way.key}>
              <th scope="row">{way.name}</th>
              <td data-title="Moved:">{way.moved}</td>
              <td data-title="Agree:">{way.agree}</td>
              <td>
                {way.decision === null ? (
                  <span className="muted">
                    {way.key === "written" || alignment.decision !== null
                      ? ""
                      : "nobody has decided yet"}
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
        {decision.state} by {decision.decidedBy}, {formatDay(decision.decidedOn, report.today)}:{" "}
        {decision.reason}
      </p>
      {mayFile ? (
        <details className="screen-only">
          <summary>
            Take back
            <span className="hidden">
              {" "}
              that it is {movedWords(decision)} ({decision.state})
            </span>
          </summary>
          <ActionForm
            action={withdrawAlignmentAction.bind(null, lineId)}
            className={styles["decide"] ?? ""}
            label="Take back how they line up"
          >
            <input type="hidden" name="alignmentId" value={decision.id} />
            <ReasonField presets={UNDO_REASONS} />
            <div>
              <SubmitButton quiet pendingWord="Taking back …">
                Take back
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}

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

function DecideFit({ lineId, recordId, fit, name }: LinePart & Deciding) {
  const what = `${name === "" ? "" : `${name}: `}${movedWords(fit)}`;
  const decide = alignAction.bind(null, lineId);
  return (
    <div className="stack-tight">
      <p>
        <span className="strong">{what}?</span>{" "}
        <span className="muted">The pairings below rest on it.</span>
      </p>
      <ActionForm action={decide} className={styles["decide"] ?? ""} label={`Accept ${what}`}>
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
          Not so<span className="hidden">: {what}</span>
        </summary>
        <ActionForm action={decide} className={styles["decide"] ?? ""} label={`Refuse ${what}`}>
          <FitInputs recordId={recordId} fit={fit} />
          <input type="hidden" name="state" value="refused" />
          <ReasonField presets={NO_LINE_UP_REASONS} />
          <div>
            <SubmitButton quiet pendingWord="Refusing …">
              Refuse
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
    <details>
      <summary>Say yourself how far the record has to move</summary>
      <ActionForm
        action={alignAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label="Another zero or scale"
      >
        <input type="hidden" name="state" value="accepted" />
        <input type="hidden" name="typed" value="yes" />
        <Field
          label="Up the line by, ft"
          name="shift"
          hint="−2.4 for down the line; 0 as written"
        />
        <Field label="Stretched by, %" name="scale" hint="−1.5 for a record that reads too long" />
        {file.records.length > 1 ? (
          <Choice
            label="Which record"
            name="recordId"
            options={[
              { value: "", label: "all records together" },
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
            Accept this one
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function Refused(part: LinePart) {
  const refused = part.file.alignments.filter((each) => each.state === "refused");
  if (refused.length === 0) return null;
  return (
    <div className="stack-tight">
      <h3>Refused before, and not proposed again</h3>
      <ul className={styles["plain"]}>
        {refused.map((decision) => (
          <li key={decision.id}>
            <p className="strong">
              {decision.recordId === null ? "" : `${recordTitle(part, decision.recordId)}: `}
              {movedWords(decision)}
            </p>
            <DecisionCell decision={decision} {...part} />
          </li>
        ))}
      </ul>
    </div>
  );
}
