import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type FixtureWeights, fixtureWeights } from "#lib/domain/split/fixture-weights.ts";
import { takeFixtureWeightsAction } from "./actions.ts";
import styles from "./cost.module.css";

/** Weights proposed from the plumbing fixtures of each property, with the sum behind each. */
export function WeightsFromFixtures({
  lineId,
  file,
  report,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly work: boolean;
}) {
  if (file.fixtures.length === 0) return null;
  const proposed = fixtureWeights(file, report.tieIns);
  return (
    <Section title="Weights from fixture counts" folded="optional, for the rule by weights">
      <div className="stack">
        <p>
          Optional: plumbing codes use these units to measure load, but no recorded agreement was
          found that shares a repair by them. The owners would have to agree to it.
        </p>
        {proposed.ok ? (
          <Proposed lineId={lineId} file={file} proposed={proposed.value} work={work} />
        ) : (
          <p>{proposed.error}</p>
        )}
      </div>
    </Section>
  );
}

function Proposed({
  lineId,
  file,
  proposed: { table, weights },
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly proposed: FixtureWeights;
  readonly work: boolean;
}) {
  const now = new Map(file.properties.map(({ id, weight }) => [id, weight]));
  return (
    <>
      <Scroll>
        <table className={`plain ${styles["steps"]}`}>
          <caption>Units by {table}</caption>
          <Heads of={["Property", "Calculation", { num: "Weight" }, { num: "Current weight" }]} />
          <tbody>
            {weights.map(({ propertyId, label, words, weight }) => (
              <tr key={propertyId}>
                <th scope="row">{label}</th>
                <td>{words}</td>
                <td className="num">{weight}</td>
                <td className="num">{now.get(propertyId) ?? "–"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {work ? (
        <ActionForm
          action={takeFixtureWeightsAction.bind(null, lineId)}
          label="Use fixture counts as weights"
        >
          <SubmitButton pendingWord="Saving…" quiet>
            Use these weights
          </SubmitButton>
        </ActionForm>
      ) : null}
    </>
  );
}
