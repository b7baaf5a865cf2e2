/**
 * What somebody typed or chose in a form, other than it was filled in: each with its label. `before`
 * names the fields that came back from a refusal, whose words count as typed.
 */
export function typedIn(form: HTMLFormElement | null, before: readonly string[]): string[] {
  const fields = form === null ? [] : [...form.elements];
  return fields.flatMap((field) => {
    const again = before.includes(field.getAttribute("name") ?? "");
    const value = wordsIn(field, again);
    return value === "" ? [] : [`${labelOf(field)}: ${value}`];
  });
}

const NOT_TYPED = ["hidden", "password", "file", "submit", "button", "reset"];

/** Of fields that people see; a password is never shown again. */
function wordsIn(field: Element, again: boolean): string {
  if (field instanceof HTMLSelectElement) return choiceIn(field, again);
  const isText = field instanceof HTMLTextAreaElement;
  if (!isText && (!(field instanceof HTMLInputElement) || NOT_TYPED.includes(field.type)))
    return "";
  if (field.type === "checkbox" || field.type === "radio") return markIn(field as HTMLInputElement);
  return again || field.value !== field.defaultValue ? field.value : "";
}

function choiceIn({ selectedOptions }: HTMLSelectElement, again: boolean): string {
  const [option] = selectedOptions;
  if (option === undefined || option.value === "") return "";
  return again || !option.defaultSelected ? option.text : "";
}

function markIn({ checked, defaultChecked }: HTMLInputElement): string {
  if (checked === defaultChecked) return "";
  return checked ? "✓" : "–";
}

function labelOf(field: Element): string {
  const label = (field as HTMLInputElement).labels?.[0]?.textContent ?? "";
  return label.replace(/\s+/g, " ").trim() || (field.getAttribute("name") ?? "");
}
