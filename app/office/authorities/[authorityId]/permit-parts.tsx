import type { ComponentProps } from "react";
import { Section } from "#app/_components/section.tsx";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { PartsGrid } from "./parts-grid.client.tsx";
import {
  conditionColumns,
  DRAWING_COLUMNS,
  ORDER_COLUMNS,
  PAVEMENT_COLUMNS,
  SCALE_COLUMNS,
} from "./permit-columns.ts";
import { PROOF_COLUMNS } from "./proof-columns.ts";

type Grid = ComponentProps<typeof PartsGrid>;

interface PermitPartsProps {
  readonly authority: Authority;
  readonly grid: Pick<Grid, "authorityId" | "base" | "readOnly">;
  readonly day: string;
}

/** A part of the authority: its table, and what is said above it. */
interface PermitPart
  extends Pick<Grid, "part" | "label" | "addWord" | "rows" | "columns" | "blank" | "emptyWords"> {
  readonly id: string;
  readonly title: string;
  readonly note: string;
}

/** What an application hangs on: when requirements apply, which permit waits, the drawing, pavement. */
export function PermitParts({ authority, grid, day }: PermitPartsProps) {
  return partsOf(authority, day).map(({ id, title, note, ...part }) => (
    <Section key={id} title={title} id={id} folded={rows(part.rows.length)} note={note}>
      <PartsGrid {...grid} {...part} />
    </Section>
  ));
}

function partsOf(authority: Authority, day: string): PermitPart[] {
  const checked = { citation: "", asOf: day };
  return [
    {
      id: "conditions",
      title: "When requirements apply",
      note: "A requirement without a row here always applies. With several rows, any one is enough. What is not known on a line counts as applying.",
      part: "conditions",
      label: "When requirements apply",
      addWord: "condition",
      rows: authority.conditions,
      columns: conditionColumns(authority.requirements),
      blank: { limit: null, ...checked },
      emptyWords:
        "No conditions yet. Example: Street use permit applies if the right-of-way is dug.",
    },
    {
      id: "order",
      title: "Order of permits",
      note: "Which permit waits for which. A step that comes too early is refused on the line.",
      part: "permitOrders",
      label: "Order of permits",
      addWord: "row",
      rows: authority.permitOrders,
      columns: ORDER_COLUMNS,
      blank: { step: "submitted", until: "issued", ...checked },
      emptyWords:
        "No order yet. Example: Street use permit is not submitted until the side sewer permit is issued.",
    },
    {
      id: "drawing",
      title: "Drawing checklist",
      note: "What the counter looks for on the drawing. Wyebook checks what it draws; a person marks the rest by name.",
      part: "drawingItems",
      label: "Drawing checklist",
      addWord: "item",
      rows: authority.drawingItems,
      columns: DRAWING_COLUMNS,
      blank: { ...checked },
      emptyWords: "No items yet. Example: North arrow; scale; lot lines; cleanouts.",
    },
    {
      id: "scales",
      title: "Drawing scales",
      note: "The scales that the counter takes. The largest that fits is drawn; what does not fit is cut at match lines.",
      part: "scales",
      label: "Drawing scales",
      addWord: "scale",
      rows: authority.scales,
      columns: SCALE_COLUMNS,
      blank: { ...checked },
      emptyWords: "No scales yet, so any usual scale is drawn. Example: 20, for 1 in = 20 ft.",
    },
    {
      id: "pavement",
      title: "Pavement",
      note: "The least that is cut and restored of each surface. Square feet on a line are worked out from these rows.",
      part: "pavementRules",
      label: "Pavement rules",
      addWord: "rule",
      rows: authority.pavementRules,
      columns: PAVEMENT_COLUMNS,
      blank: {
        beyond: 0,
        leastWidth: null,
        leastLength: null,
        noCutYears: null,
        ...checked,
      },
      emptyWords: "No rules yet. Example: asphalt, 1 ft beyond each edge, at least 4 ft wide.",
    },
    {
      id: "proof",
      title: "Proof of delivery",
      note: "What counts as delivered, by letter and method. Where no row applies, mail, postings, and door hangers count only with a reply; certified mail when accepted; handed over in person at once. A row with no citation can only ask for more.",
      part: "proofRules",
      label: "Proof of delivery",
      addWord: "rule",
      rows: authority.proofRules,
      columns: PROOF_COLUMNS,
      blank: { letter: null, counts: "never", ...checked },
      emptyWords:
        "No rules yet. Example: Every letter, certified mail, when accepted or attempted, Code 13.40.050.",
    },
  ];
}

function rows(count: number): string {
  if (count === 0) return "none";
  return count === 1 ? "1 row" : `${count} rows`;
}
