import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { SLOPES } from "#lib/domain/capacity/slope.ts";
import { tableSources } from "#lib/domain/capacity/sources.ts";
import { CODE_WORDS } from "#lib/domain/capacity/words.ts";
import { SLOPE_NAMES } from "#lib/domain/facts/plumbing-code.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { withNone } from "../../field-terms.ts";
import type { LinePart } from "../../part.ts";
import { optionsOf } from "../../terms.ts";
import { saveTablesAction } from "./actions.ts";

const BY_SIZE = "code minimum for the pipe size";

/** What the results are compared with, and where each table is from. */
export function TablesForm({ lineId, file, mayFile }: LinePart) {
  const { plumbingCode, leastSlope } = file.line;
  const slopes = SLOPE_NAMES.map((value) => ({ value, label: SLOPES[value].words }));
  return (
    <Section
      title="Code used"
      folded={`${plumbingCode === null ? "not chosen" : CODE_WORDS[plumbingCode]}; minimum slope: ${leastSlope === null ? BY_SIZE : SLOPES[leastSlope].words}`}
      note="Towns amend the model codes. Look up which one yours has adopted, and which minimum slope it requires."
    >
      {mayFile ? (
        <ActionForm action={saveTablesAction.bind(null, lineId)} label="Code used">
          <SeenField value={seenOf(lineSeen(file.line, ["plumbingCode", "leastSlope"]))} />
          <div className="form-grid">
            <Choice
              key={`code ${plumbingCode}`}
              label="Plumbing code"
              name="plumbingCode"
              options={withNone(optionsOf(CODE_WORDS), "not chosen")}
              defaultValue={plumbingCode ?? ""}
            />
            <Choice
              key={`slope ${leastSlope}`}
              label="Minimum slope"
              name="leastSlope"
              options={withNone(slopes, BY_SIZE)}
              defaultValue={leastSlope ?? ""}
            />
          </div>
          <div>
            <SubmitButton pendingWord="Saving …">Save</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <dl className="facts">
          <dt>Plumbing code</dt>
          <dd>{plumbingCode === null ? "not chosen" : CODE_WORDS[plumbingCode]}</dd>
          <dt>Minimum slope</dt>
          <dd>{leastSlope === null ? BY_SIZE : SLOPES[leastSlope].words}</dd>
        </dl>
      )}
      <h3>Tables used</h3>
      <ul className="small">
        {tableSources(plumbingCode).map(({ title, edition, source }) => (
          <li key={title}>
            {title}: {edition}.{" "}
            <span className="muted">
              {source.startsWith("https://") ? <a href={source}>Source</a> : source}. The
              authority’s own edition decides.
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
