// What a statutory paper says besides the office's own text of it, in both languages.

export const STATUTORY_EN = {
  under: (citation: string) => `This notice is given to you under ${citation}.`,
  check: "Not confirmed yet",
  checkText:
    "Check this text against the statute before it is given. No one at our office has confirmed it.",
  noText: "The office’s text of this notice is not entered yet.",
  otherLanguage: "The text of this notice is in English.",
  about: "About",
  property: "Property",
  contractor: "Contractor",
  license: "License",
  signed: "Contract signed",
  amount: "Contract amount",
};

export const STATUTORY_ES: typeof STATUTORY_EN = {
  under: (citation) => `Le entregamos este aviso conforme a ${citation}.`,
  check: "Texto aún sin confirmar",
  checkText:
    "Compare este texto con la ley antes de entregarlo. Nadie de nuestra oficina lo ha confirmado.",
  noText: "La oficina todavía no ha registrado el texto de este aviso.",
  otherLanguage: "El texto de este aviso está en inglés.",
  about: "Datos",
  property: "Propiedad",
  contractor: "Contratista",
  license: "Licencia",
  signed: "Firma del contrato",
  amount: "Monto del contrato",
};
