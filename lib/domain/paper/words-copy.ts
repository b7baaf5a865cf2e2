/** What a copy says before the letter it copies: whose it is, why it comes, and that it asks nothing. */
export const COPY_EN = {
  title: (title: string) => `Copy: ${title}`,
  lead: (place: string) =>
    `This is a copy for your file. You are listed with us as lender (lienholder) of ${place}. Nothing is asked of you.`,
  ifPapers: {
    "joint-agreement":
      "If your loan papers call for your consent before the owner signs or records this agreement, please tell the owner, and us.",
    "share-demand":
      "If you mean to pay any of it for the owner, please call us first. No lien is claimed by this letter.",
  },
  wrong: (place: string) =>
    `If you hold no loan or lien on ${place}, please tell us and we will take you off the list.`,
  original: (name: string, day: string | null) =>
    `The letter to ${name}${day === null ? "" : `, of ${day}`}`,
  you: (name: string) => `“You” in the rest of this letter means ${name}.`,
  none: "The letter that this copies is not on file.",
};

export type CopyWords = typeof COPY_EN;

export const COPY_ES: CopyWords = {
  title: (title) => `Copia: ${title}`,
  lead: (place) =>
    `Esta es una copia para su archivo. Usted figura en nuestros archivos como acreedor (titular de un gravamen) de ${place}. No se le pide nada.`,
  ifPapers: {
    "joint-agreement":
      "Si los documentos de su préstamo exigen su consentimiento antes de que el propietario firme o registre este acuerdo, por favor avísele al propietario y avísenos a nosotros.",
    "share-demand":
      "Si piensa pagar algo por cuenta del propietario, llámenos antes, por favor. Con esta carta no se reclama ningún gravamen.",
  },
  wrong: (place) =>
    `Si no tiene ningún préstamo ni gravamen sobre ${place}, por favor díganoslo y quitaremos su nombre de la lista.`,
  original: (name, day) => `La carta a ${name}${day === null ? "" : `, del ${day}`}`,
  you: (name) => `En el resto de esta carta, «usted» se refiere a ${name}.`,
  none: "La carta de la que esta es copia no está en nuestros archivos.",
};
