import type { LedgerKind, PaymentMethod } from "../facts/ledger-entry.ts";
import type { Language } from "../say/language.ts";
import type { Age } from "./aging.ts";

/** Standing words of invoices, statements and demands in English; the Spanish have the same shape. */
const EN = {
  kind: {
    invoice: "Invoice",
    deposit: "Deposit",
    payment: "Payment",
    credit: "Credit",
    refund: "Refund",
    reversal: "Reversed",
  } satisfies Record<LedgerKind, string>,
  method: {
    check: "by check",
    card: "by card",
    "bank-transfer": "by bank transfer",
    cash: "in cash",
    other: "other method",
  } satisfies Record<PaymentMethod, string>,
  age: {
    "not-due": "Not due yet",
    "to-30": "1 to 30 days",
    "to-60": "31 to 60 days",
    "to-90": "61 to 90 days",
    "over-90": "Over 90 days",
  } satisfies Record<Age, string>,
  number: (number: number) => `No. ${number}`,
  reference: (text: string) => `reference ${text}`,
  due: (day: string) => `due ${day}`,
  bySplit: (number: number) => `share of the work, split No. ${number}`,
  takesBack: (what: string, number: number) => `Reversal of ${what.toLowerCase()} No. ${number}`,
  undone: "later reversed",

  statement: {
    title: "Statement of account",
    subject: (place: string) => `Statement of account for ${place}`,
    opening: (place: string, line: string) =>
      `Invoices and payments for ${place}, for the work on the shared sewer “${line}”.`,
    open: "Balance due today",
    settled: "You have no balance due. Thank you.",
    held: "Credit balance",
    heldNote: "It will be applied to your next invoice, or refunded on request.",
    head: ["Date", "Description", "Charged", "Paid or credited", "Balance"],
    sum: "Total",
    ages: "Aging",
    agesHead: ["Days past due", "Balance due"],
    overdue: (amount: string) => `${amount} is past due.`,
    order: "Payments are applied to the oldest due invoice first.",
    share: (amount: string, number: number) => `Your share under split No. ${number} is ${amount}.`,
    empty: "No entries on this account yet.",
    ask: "Does something not match your records? Write or call and we’ll go over it with you.",
  },
  invoice: {
    title: "Invoice",
    subject: (number: number, place: string) => `Invoice No. ${number} for ${place}`,
    number: "Invoice number",
    due: "Due",
    forWhat: "Charges",
    head: ["Description", "Amount"],
    share: (place: string, number: number) =>
      `Share of ${place} in the work on the shared sewer, split No. ${number}`,
    part: (place: string, number: number) =>
      `Part of the share of ${place} in the work on the shared sewer, split No. ${number}`,
    other: (place: string) => `Work on the shared sewer for ${place}`,
    ofShare: (share: string, before: string) =>
      `Your full share is ${share}; ${before} was invoiced earlier, less credits.`,
    amount: "Amount of this invoice",
    stillOpen: "Balance due on this invoice",
    paid: (amount: string) => `${amount} has been paid or credited.`,
    paidInFull: "Paid in full. Thank you.",
    takenBack: "This invoice was voided. Please do not pay it.",
    howToPay: "How to pay",
    check: (office: string, place: string) =>
      `By check payable to ${office}, mailed or delivered to: ${place}.`,
    askOther: (contact: string) =>
      `To pay by card, bank transfer or installments, contact us first: ${contact}.`,
    quote: (reference: string) => `Please write “${reference}” on the check.`,
    joint: (names: string) => `Addressed to ${names} jointly; one payment covers it.`,
    attached: "The invoice is attached as a PDF.",
    basis: "The calculation was sent with the proposed split; we will send it again on request.",
  },
  slip: {
    cut: "Cut here and return this part with your check.",
    title: "Payment slip",
    payable: "Make check payable to",
    account: "Account",
    from: "From",
    amount: "Amount due",
    enclosed: "Amount enclosed",
  },
  demand: {
    state: (invoiced: string, settled: string) =>
      `${invoiced} invoiced; ${settled} paid or credited.`,
    deposit: (share: string, held: string) =>
      `Your share is ${share}; your ${held} deposit is applied to it.`,
    oldest: (day: string) => `The oldest amount was due on ${day}.`,
    enclosed: "the statement of account",
    amount: (place: string) => `Balance due for ${place}`,
  },
};

export type LedgerWords = typeof EN;

const ES: LedgerWords = {
  kind: {
    invoice: "Factura",
    deposit: "Depósito",
    payment: "Pago",
    credit: "Abono",
    refund: "Devolución",
    reversal: "Anulación",
  },
  method: {
    check: "con cheque",
    card: "con tarjeta",
    "bank-transfer": "por transferencia",
    cash: "en efectivo",
    other: "de otra manera",
  },
  age: {
    "not-due": "Aún no vence",
    "to-30": "1 a 30 días",
    "to-60": "31 a 60 días",
    "to-90": "61 a 90 días",
    "over-90": "Más de 90 días",
  },
  number: (number) => `núm. ${number}`,
  reference: (text) => `referencia ${text.replace(/^No\. ?(?=\d)/i, "núm. ")}`,
  due: (day) => `vence el ${day}`,
  bySplit: (number) => `parte de la obra, reparto núm. ${number}`,
  takesBack: (what, number) => `${what} núm. ${number} sin efecto`,
  undone: "anulada después",

  statement: {
    title: "Estado de cuenta",
    subject: (place) => `Estado de cuenta de ${place}`,
    opening: (place, line) =>
      `Lo facturado y lo recibido por ${place}, por la obra en el desagüe compartido «${line}».`,
    open: "Pendiente hoy",
    settled: "No queda nada pendiente. Gracias.",
    held: "Tenemos a su favor",
    heldNote: "Cuenta para la próxima factura, o se lo devolvemos cuando lo pida.",
    head: ["Fecha", "Concepto", "Cargo", "Pagado o abonado", "Saldo"],
    sum: "En total",
    ages: "Desde cuándo está vencido",
    agesHead: ["Desde el vencimiento", "Pendiente"],
    overdue: (amount) => `${amount} ya pasó de su fecha.`,
    order: "Lo que entra paga primero la factura que vence antes.",
    share: (amount, number) => `La parte según el reparto núm. ${number} es ${amount}.`,
    empty: "Todavía no hay movimientos en esta cuenta.",
    ask: "¿Hay algo que no coincide con sus papeles? Escríbanos o llámenos; lo revisamos juntos.",
  },
  invoice: {
    title: "Factura",
    subject: (number, place) => `Factura núm. ${number} de ${place}`,
    number: "Número de factura",
    due: "Vence",
    forWhat: "Por qué concepto",
    head: ["Concepto", "Monto"],
    share: (place, number) =>
      `Parte de ${place} en la obra del desagüe compartido, reparto núm. ${number}`,
    part: (place, number) =>
      `Porción de la parte de ${place} en la obra del desagüe compartido, reparto núm. ${number}`,
    other: (place) => `Obra en el desagüe compartido por ${place}`,
    ofShare: (share, before) =>
      `La parte completa es ${share}; ${before} ya se facturó antes, menos lo abonado.`,
    amount: "Monto de esta factura",
    stillOpen: "Pendiente de esta factura",
    paid: (amount) => `${amount} ya se recibió o se abonó.`,
    paidInFull: "Está pagada por completo. Gracias.",
    takenBack: "Esta factura se anuló; por favor, no la pague.",
    howToPay: "Cómo pagar",
    check: (office, place) => `Con cheque a nombre de ${office}, por correo o en mano a: ${place}.`,
    askOther: (contact) =>
      `Con tarjeta, por transferencia o en partes: consúltenos antes, ${contact}.`,
    quote: (reference) => `Escriba en él, por favor, «${reference}».`,
    joint: (names) =>
      `Esta factura es para ${names} en conjunto; se paga una sola vez, por cualquiera de ellos.`,
    attached: "La factura va adjunta en PDF.",
    basis:
      "El cálculo de su parte se envió con el reparto propuesto; se lo enviamos otra vez si lo pide.",
  },
  slip: {
    cut: "Corte aquí y envíe esta parte con su cheque.",
    title: "Talón de pago",
    payable: "Cheque a nombre de",
    account: "Cuenta",
    from: "De",
    amount: "Monto por pagar",
    enclosed: "Monto que envía",
  },
  demand: {
    state: (invoiced, settled) =>
      `Se facturó ${invoiced}; de eso, ${settled} ya se recibió o se abonó.`,
    deposit: (share, held) => `La parte es ${share}; el depósito de ${held} cuenta para ella.`,
    oldest: (day) => `Lo más antiguo venció el ${day}.`,
    enclosed: "el estado de cuenta",
    amount: (place) => `Pendiente de ${place}`,
  },
};

/** The words of the money book for people, by the language of their reader. */
export const LEDGER_WORDS: Record<Language, LedgerWords> = { en: EN, es: ES };
