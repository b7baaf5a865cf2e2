import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { crewSafety } from "#lib/domain/safety/crew-safety.ts";

/** So many rules of a kind are shown before the others are asked for. */
const AT_ONCE = 20;

/** What the crew keeps to, where the start is planned. Worked out from the file; no one can remove it. */
export function CrewSafety({
  file,
  report,
  all,
}: {
  readonly file: LineFile;
  readonly report: Report;
  /** The address asks for every rule of very many. */
  readonly all: boolean;
}) {
  return (
    <Section
      title="Crew safety"
      id="crew-safety"
      folded="what this job requires"
      note="By the work in force: depth, flow, manholes, what the pipe is made of. Federal rules where a section is named, else common practice; a state may ask for more. The competent person on site decides."
    >
      {crewSafety(file, report).map(({ key, title, why, rules }) => (
        <section key={key} aria-label={title} className="stack-tight">
          <h3>{title}</h3>
          {why === "" ? null : <p>{why}</p>}
          <ul>
            {(all ? rules : rules.slice(0, AT_ONCE)).map((rule) => (
              <li key={rule.key}>
                {rule.words}
                {rule.citation === "" ? null : (
                  <span className="muted small"> ({rule.citation})</span>
                )}
              </li>
            ))}
            {all || rules.length <= AT_ONCE ? null : (
              <li>
                <Link href={`/lines/${file.line.id}/schedule?safety=all#crew-safety`}>
                  {rules.length - AT_ONCE} more
                </Link>{" "}
                (the packet prints them all)
              </li>
            )}
          </ul>
        </section>
      ))}
    </Section>
  );
}
