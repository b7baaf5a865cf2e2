import { customType, integer, real, text } from "drizzle-orm/sqlite-core";
import { z } from "zod";
import { type OpenAnswer, QUESTIONS } from "#lib/domain/desk/answer.ts";
import { PAYMENT_METHODS, type PaymentMethod } from "#lib/domain/facts/ledger-entry.ts";
import { OPEN_DAYS } from "#lib/domain/facts/open-hours.ts";
import type { Address } from "#lib/domain/facts/party.ts";
import { TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { DRAINS, FLOORS } from "#lib/domain/facts/test-day.ts";

// Columns by what they hold, so that a table reads as a list of facts.

/** Hundredths of a foot. */
export function cft(name: string) {
  return integer(`${name}_cft`);
}

export function cents(name: string) {
  return integer(`${name}_cents`);
}

export function inches(name: string) {
  return real(`${name}_in`);
}

export function yesNo(name: string) {
  return integer(name, { mode: "boolean" }).notNull();
}

export function words(name: string) {
  return text(name).notNull();
}

/** A JSON text that is parsed by its shape whenever it is read. */
function json<T>(name: string, shape: z.ZodType<T>) {
  return customType<{ data: T; driverData: string }>({
    dataType: () => "text",
    toDriver: (value) => JSON.stringify(value),
    fromDriver: (value) => shape.parse(JSON.parse(value)),
  })(name);
}

const AddressShape = z.object({
  street: z.string(),
  unit: z.string(),
  city: z.string(),
  state: z.string(),
  zip: z.string(),
});

export function address(name: string) {
  return json<Address>(`${name}_json`, AddressShape);
}

export function agreementShares(name: string) {
  return json(`${name}_json`, z.array(z.object({ propertyId: z.string(), parts: z.number() })));
}

export function frozenShares(name: string) {
  return json(
    `${name}_json`,
    z.array(
      z.object({
        propertyId: z.string().nullable(),
        tieInId: z.string().nullable(),
        amount: z.number().int(),
        recoverable: z.number().int(),
      }),
    ),
  );
}

export function draftDecisions(name: string) {
  return json(
    `${name}_json`,
    z.array(
      z.object({
        key: z.string(),
        state: z.enum(["accepted", "dropped"]),
        observationId: z.string().nullable(),
      }),
    ),
  );
}

export function testStops(name: string) {
  return json(
    `${name}_json`,
    z.array(
      z.object({
        propertyId: z.string().nullable(),
        unitId: z.string().nullable(),
        pointId: z.string().nullable().default(null),
        tieInIds: z.array(z.string()),
        drains: z.array(z.object({ floor: z.enum(FLOORS), drain: z.enum(DRAINS) })).default([]),
        fixture: z.string(),
        colour: z.string(),
        dose: z.string().default(""),
        flushGallons: z.number().int().nullable().default(null),
        startsAt: z.string(),
        waitMinutes: z.number().int(),
        rinseMinutes: z.number().int().default(0),
        passed: z.enum(TEST_RESULTS).nullable().default(null),
      }),
    ),
  );
}

export function openHours(name: string) {
  return json(
    `${name}_json`,
    z.object({ days: z.enum(OPEN_DAYS), from: z.string(), to: z.string() }),
  );
}

export function paymentMethods(name: string) {
  return json<readonly PaymentMethod[]>(`${name}_json`, z.array(z.enum(PAYMENT_METHODS)));
}

export function signatureViews(name: string) {
  return json(`${name}_json`, z.array(z.object({ at: z.string(), what: z.string() })));
}

export function ids(name: string) {
  return json<readonly string[]>(`${name}_json`, z.array(z.string()));
}

export function openAnswers(name: string) {
  return json<readonly OpenAnswer[]>(
    `${name}_json`,
    z.array(
      z.object({
        question: z.enum(QUESTIONS),
        asked: z.string(),
        sentence: z.string(),
        closes: z.string().nullable(),
        where: z.string().exactOptional(),
      }),
    ),
  )
    .notNull()
    .default([]);
}
