/** Goes to the row that a table of this page has for what is chosen. */
export function goToRow(id: string): void {
  const rows = [...document.querySelectorAll<HTMLElement>(`[data-row-id="${CSS.escape(id)}"]`)];
  const row = rows.find((one) => one.offsetParent !== null);
  if (row === undefined) return;
  const control = row.matches("button, a, input")
    ? row
    : row.querySelector<HTMLElement>("input, button, a, select, textarea");
  row.scrollIntoView({ block: "nearest" });
  if (control !== null) control.focus();
  else {
    row.tabIndex = -1;
    row.focus();
  }
}
