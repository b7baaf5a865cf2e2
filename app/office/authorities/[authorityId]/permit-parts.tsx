import { Section } from "#app/_components/section.tsx";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { PartsGrid } from "./parts-grid.client.tsx";
import {
  conditionColumns,
  DRAWING_COLUMNS,
  ORDER_COLUMNS,
  PAVEMENT_COLUMNS,
} from "./permit-columns.ts";
import { PROOF_COLUMNS } from "./proof-columns.ts";

interface PermitPartsProps {
  readonly authority: Authority;
  readonly grid: {
    readonly authorityId: string;
    readonly base: number;
    readonly readOnly: boolean;
  };
  readonly day: string;
}

/** What an application hangs on: when requirements apply, which permit waits, the drawing, pavement. */
export function PermitParts({ authority, grid, day }: PermitPartsProps) {
  return (
    <>
      <Section
        title="When requirements apply"
        id="conditions"
        folded={rows(authority.conditions.length)}
        note="A requirement without a row here always applies. With several rows, any one is enough. What is not known on a line counts as applying."
      >
        <PartsGrid
          {...grid}
          part="conditions"
          label="When requirements apply"
          addWord="condition"
          rows={authority.conditions}
          columns={conditionColumns(authority.requirements)}
          blank={{ limit: null, citation: "", asOf: day }}
          emptyWords="No conditions yet. Example: Street use permit applies if the right-of-way is dug."
        />
      </Section>
      <Section
        title="Order of permits"
        id="order"
        folded={rows(authority.permitOrders.length)}
        note="Which permit waits for which. A step that comes too early is refused on the line."
      >
        <PartsGrid
          {...grid}
          part="permitOrders"
          label="Order of permits"
          addWord="row"
          rows={authority.permitOrders}
          columns={ORDER_COLUMNS}
          blank={{ step: "submitted", until: "issued", citation: "", asOf: day }}
          emptyWords="No order yet. Example: Street use permit is not submitted until the side sewer permit is issued."
        />
      </Section>
      <Section
        title="Drawing checklist"
        id="drawing"
        folded={rows(authority.drawingItems.length)}
        note="What the counter looks for on the drawing. Wyebook checks what it draws; a person marks the rest by name."
      >
        <PartsGrid
          {...grid}
          part="drawingItems"
          label="Drawing checklist"
          addWord="item"
          rows={authority.drawingItems}
          columns={DRAWING_COLUMNS}
          blank={{ citation: "", asOf: day }}
          emptyWords="No items yet. Example: North arrow; scale; lot lines; cleanouts."
        />
      </Section>
      <Section
        title="Pavement"
        id="pavement"
        folded={rows(authority.pavementRules.length)}
        note="The least that is cut and restored of each surface. Square feet on a line are worked out from these rows."
      >
        <PartsGrid
          {...grid}
          part="pavementRules"
          label="Pavement rules"
          addWord="rule"
          rows={authority.pavementRules}
          columns={PAVEMENT_COLUMNS}
          blank={{
            beyond: 0,
            leastWidth: null,
            leastLength: null,
            noCutYears: null,
            citation: "",
            asOf: day,
          }}
          emptyWords="No rules yet. Example: asphalt, 1 ft beyond each edge, at least 4 ft wide."
        />
      </Section>
      <Section
        title="Proof of delivery"
        id="proof"
        folded={rows(authority.proofRules.length)}
        note="What counts as delivered, by letter and method. Where no row applies, mail, postings, and door hangers count only with a reply; certified mail when accepted; handed over in person at once. A row with no citation can only ask for more."
      >
        <PartsGrid
          {...grid}
          part="proofRules"
          label="Proof of delivery"
          addWord="rule"
          rows={authority.proofRules}
          columns={PROOF_COLUMNS}
          blank={{ letter: null, counts: "never", citation: "", asOf: day }}
          emptyWords="No rules yet. Example: Every letter, certified mail, when accepted or attempted, Code 13.40.050."
        />
      </Section>
    </>
  );
}

function rows(count: number): string {
  if (count === 0) return "none";
  return count === 1 ? "1 row" : `${count} rows`;
}
