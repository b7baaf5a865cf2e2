import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { formatCell } from "#app/_components/grid/cell.ts";
import { choicesOf } from "#app/_components/grid/choices.ts";
import { type GridColumn, type GridRow, UNIT_WORDS } from "#app/_components/grid/column.ts";
import type { FormAction } from "#app/form.ts";
import styles from "./quick-row.module.css";

/**
 * One row of a table as a form for a thumb: the columns that every row needs first, the others folded.
 * On a phone only, unless it is wanted everywhere.
 */
export function QuickRow({
  title,
  action,
  columns,
  first,
  blank,
  everywhere = false,
}: {
  readonly title: string;
  readonly action: FormAction;
  readonly columns: readonly GridColumn[];
  /** Keys of the columns that are not folded. */
  readonly first: readonly string[];
  readonly blank: GridRow;
  readonly everywhere?: boolean;
}) {
  const shown = columns.filter((column) => first.includes(column.key));
  const folded = columns.filter((column) => !first.includes(column.key));
  return (
    <div className={styles["thumb"]} data-everywhere={everywhere}>
      <ActionForm action={action} reset label={title}>
        <h4>{title}</h4>
        <Fields columns={shown} blank={blank} />
        <details>
          <summary>More details (optional)</summary>
          <Fields columns={folded} blank={blank} />
        </details>
        <SubmitButton pendingWord="Adding …">Add</SubmitButton>
      </ActionForm>
    </div>
  );
}

function Fields({
  columns,
  blank,
}: {
  readonly columns: readonly GridColumn[];
  readonly blank: GridRow;
}) {
  return (
    <div className={styles["two"]}>
      {columns.map((column) => (
        <ColumnField key={column.key} column={column} value={blank[column.key]} />
      ))}
    </div>
  );
}

function ColumnField({ column, value }: { readonly column: GridColumn; readonly value: unknown }) {
  const { key, title, kind } = column;
  if (kind === "yesno") return <Tick label={title} name={key} defaultChecked={value === true} />;
  const choices = choicesOf(column);
  if (choices.length > 0) {
    const options = choices.map((choice) => ({
      ...choice,
      label: choice.label === "" ? "none" : choice.label,
    }));
    const defaultValue = typeof value === "string" ? value : "";
    // What nobody has said yet is not said by the first choice of the list.
    const unsaid = defaultValue === "" && !choices.some((choice) => choice.value === "");
    return (
      <Choice
        label={title}
        name={key}
        options={unsaid ? [{ value: "", label: "choose" }, ...options] : options}
        defaultValue={defaultValue}
        required={column.required}
      />
    );
  }
  const unit = UNIT_WORDS[kind];
  return (
    <Field
      label={title}
      name={key}
      type={kind === "day" ? "date" : "text"}
      defaultValue={kind === "day" ? String(value ?? "") : formatCell(column, value)}
      unit={unit === "" || kind === "day" ? undefined : unit}
      inputMode={kind === "text" || kind === "video" ? "text" : "decimal"}
      required={column.required}
    />
  );
}
