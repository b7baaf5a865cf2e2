import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { depthUnknown, groupCautions, scopeCautions } from "#lib/domain/split/scope-cautions.ts";
import styles from "./cost.module.css";

/** What depth and place ask of each piece of work. The facts raise it; no one can remove it. */
export function Cautions({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const cautions = scopeCautions(file, report.tieIns);
  const unknown = depthUnknown(file);
  if (cautions.length === 0 && unknown === null) return null;
  const stopped = cautions.filter(({ needs }) => needs.some(({ stops }) => stops));
  return (
    <>
      {stopped.map((caution) => (
        <NoticeBox key={caution.itemId} kind="hold" title={`${caution.title}: stop`}>
          {caution.needs
            .filter(({ stops }) => stops)
            .map(({ words }) => (
              <p key={words}>{words}</p>
            ))}
        </NoticeBox>
      ))}
      <Section
        title="What the depth and location require"
        id="cautions"
        folded="to include in the price"
      >
        {unknown === null ? null : <p>{unknown}</p>}
        <ul className={styles["cautions"]}>
          {groupCautions(cautions).map((group) => (
            <Caution key={group.works[0]?.itemId} group={group} />
          ))}
        </ul>
        <p className="muted">These come from the file and print in the permit packet.</p>
      </Section>
    </>
  );
}

type Group = ReturnType<typeof groupCautions>[number];

function Caution({ group: { works, needs } }: { readonly group: Group }) {
  const asked = needs.filter(({ stops }) => !stops);
  if (asked.length === 0 && works.every(({ depth }) => depth === "")) return null;
  return (
    <li>
      {works.map(({ itemId, title, depth }) => (
        <div key={itemId}>
          <strong>{title}.</strong> {depth}
        </div>
      ))}
      <ul>
        {asked.map(({ words, citation }) => (
          <li key={words}>
            {words} {citation === "" ? null : <span className="muted">({citation})</span>}
          </li>
        ))}
      </ul>
    </li>
  );
}
