import { describe, expect, test } from "vitest";
import { valueAt, withValueAt } from "#app/_components/grid/field-path.ts";

const SIBLINGS = ["name", "mailing.street", "mailing.city"];

describe("withValueAt()", () => {
  test("sets a field, and leaves the rest as it was", () => {
    const row = { id: "p", name: "Ada", mailing: null };
    expect(withValueAt(row, "name", { value: "Ida", siblings: SIBLINGS, blank: {} })).toEqual({
      id: "p",
      name: "Ida",
      mailing: null,
    });
  });

  test("makes an address out of nothing when something is typed, and nothing again when emptied", () => {
    const row = { id: "p", mailing: null };
    const blank = { mailing: null };
    const typed = withValueAt(row, "mailing.city", {
      value: "Quillhaven",
      siblings: SIBLINGS,
      blank,
    });
    expect(typed).toEqual({ id: "p", mailing: { street: "", city: "Quillhaven" } });
    const emptied = withValueAt(typed, "mailing.city", { value: "", siblings: SIBLINGS, blank });
    expect(emptied).toEqual({ id: "p", mailing: null });
  });

  test("keeps an address that may not be null, even empty", () => {
    const row = { id: "p", mailing: { street: "1 Weir Street", city: "" } };
    const options = { value: "", siblings: SIBLINGS, blank: {} };
    expect(withValueAt(row, "mailing.street", options)).toEqual({
      id: "p",
      mailing: { street: "", city: "" },
    });
  });

  test("adds, changes and removes a member of a list", () => {
    const path = "shares[propertyId=p2].parts";
    const options = (value: unknown) => ({ value, siblings: [path], blank: {} });
    const row = { id: "g", shares: [{ propertyId: "p1", parts: 1 }] };
    const added = withValueAt(row, path, options(2));
    expect(added["shares"]).toEqual([
      { propertyId: "p1", parts: 1 },
      { propertyId: "p2", parts: 2 },
    ]);
    expect(valueAt(added, path)).toBe(2);
    const changed = withValueAt(added, path, options(3));
    expect(valueAt(changed, path)).toBe(3);
    expect(withValueAt(changed, path, options(null))).toEqual(row);
  });
});

test("valueAt() is null where some step of the path is not there", () => {
  expect(valueAt({ id: "p", mailing: null }, "mailing.street")).toBeNull();
  expect(valueAt({ id: "p", shares: [] }, "shares[propertyId=p1].parts")).toBeNull();
});
