import { integer, text } from "drizzle-orm/sqlite-core";
import { z } from "zod";
import { type OpenAnswer, QUESTIONS } from "#lib/domain/desk/answer.ts";
import { PAYMENT_METHODS, type PaymentMethod } from "#lib/domain/facts/ledger-entry.ts";
import { OPEN_DAYS } from "#lib/domain/facts/open-hours.ts";
import type { Address } from "#lib/domain/facts/party.ts";
import { json } from "./fact-columns.ts";
import { FieldsShape, MappingsShape, NotesShape, PagesShape } from "./form-shape.ts";

// Columns by what they hold, so that a table reads as a list of facts.

export function yesNo(name: string) {
  return integer(name, { mode: "boolean" }).notNull();
}

export function words(name: string) {
  return text(name).notNull();
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

/** What is on a form, and what goes where. */
export function formPages(name: string) {
  return json(`${name}_json`, PagesShape);
}

export function formFields(name: string) {
  return json(`${name}_json`, FieldsShape);
}

export function formMappings(name: string) {
  return json(`${name}_json`, MappingsShape);
}

export function notes(name: string) {
  return json(`${name}_json`, NotesShape);
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
