import fc from "fast-check";
import { expect, test } from "vitest";
import { inMailingOrder } from "#lib/domain/mailing/mailing-order.ts";

function at(street: string, zip = "98000", unit = "") {
  return { street, unit, city: "Quillhaven", state: "WA", zip };
}

test("by ZIP code, then street, then the number as a number, then the unit", () => {
  const walked = [
    at("PO Box 9", "97001"),
    at("PO Box 118", "97001"),
    at("2 Fennel Row"),
    at("10 Fennel Row", "98000", "Unit 2"),
    at("10 Fennel Row", "98000", "Unit 10"),
    at("10 1/2 Fennel Row"),
    at("112 Fennel Row"),
    at("3 Tollgate Lane"),
    at("1 Alder Court", "98001-0002"),
    at("Rue du Port 4, Québec", ""),
  ];
  const mixed = walked.toSorted((one, other) => (one.street < other.street ? 1 : -1));
  expect(inMailingOrder(mixed, (piece) => piece).map(({ street, unit }) => [street, unit])).toEqual(
    walked.map(({ street, unit }) => [street, unit]),
  );
});

test("nothing is lost or doubled, whatever is typed", () => {
  const address = fc.record({
    street: fc.string(),
    unit: fc.string(),
    city: fc.string(),
    state: fc.string(),
    zip: fc.string(),
  });
  fc.assert(
    fc.property(fc.array(address), (pieces) => {
      const sorted = inMailingOrder(pieces, (piece) => piece);
      expect(new Set(sorted)).toEqual(new Set(pieces));
      expect(sorted).toHaveLength(pieces.length);
    }),
  );
});
