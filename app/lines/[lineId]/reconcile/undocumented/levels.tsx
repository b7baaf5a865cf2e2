import { Section } from "#app/_components/section.tsx";
import type { EvidenceLevel } from "#lib/domain/facts/test.ts";
import { LEVEL_WORDS } from "#lib/domain/tiein/level-words.ts";
import styles from "../reconcile.module.css";

/** The ladder of evidence, told once. */
export function Levels() {
  const levels = (Object.keys(LEVEL_WORDS) as unknown[]).map(Number) as EvidenceLevel[];
  return (
    <Section
      title="Confidence levels"
      id="levels"
      folded="0 to 6"
      note="No one is asked to pay before level 5, or before the owner accepts the tie-in. An inquiry letter needs level 1."
    >
      <ol className={styles["ladder"]}>
        {levels.toReversed().map((level) => (
          <li key={level}>
            <span>{level}</span>
            <span>{LEVEL_WORDS[level]}</span>
          </li>
        ))}
      </ol>
    </Section>
  );
}
