import type { Language } from "../say/language.ts";

interface MeetingWords {
  readonly seen: {
    readonly asked: string;
    readonly none: string;
    readonly live: (count: number) => string;
    readonly open: (count: number) => string;
    readonly faults: (count: number) => string;
  };
  readonly why: { readonly asked: string; readonly answer: string };
  readonly cost: {
    readonly asked: string;
    readonly none: string;
    readonly total: (total: string, rule: string) => string;
  };
  readonly authority: {
    readonly asked: string;
    readonly unknown: string;
    readonly none: (name: string) => string;
    readonly some: (name: string, places: string) => string;
    readonly unclear: (places: string) => string;
  };
  readonly no: { readonly asked: string; readonly said: string; readonly notSaid: string };
  readonly when: {
    readonly asked: string;
    readonly none: string;
    readonly begins: (day: string) => string;
    readonly noPause: string;
    readonly pause: (day: string) => string;
  };
}

const EN: MeetingWords = {
  seen: {
    asked: "What did the camera see?",
    none: "No camera run is on file yet.",
    live: (count) =>
      count === 1
        ? "1 connection in use joins the shared pipe."
        : `${count} connections in use join the shared pipe.`,
    open: (count) =>
      count === 1
        ? "For 1 of them it is not known yet whose it is."
        : `For ${count} of them it is not known yet whose they are.`,
    faults: (count) =>
      count === 0
        ? "No break or blockage was logged."
        : `${count === 1 ? "1 break or blockage was" : `${count} breaks or blockages were`} logged; the letter lists each.`,
  },
  why: {
    asked: "Why me?",
    answer:
      "Because your drain joins this pipe, or may, or the pipe crosses your lot. Where it is not shown that your drain joins, no one is asking you to pay.",
  },
  cost: {
    asked: "What does it cost?",
    none: "No split has been chosen yet, so no one has a figure yet.",
    total: (total, rule) =>
      `${total} in all, split by this rule: ${rule}. Your own figure is in your own envelope, with how it was calculated.`,
  },
  authority: {
    asked: "Is it the city’s?",
    unknown: "That is not settled yet: no authority’s rule has been applied to this pipe.",
    none: (name) => `By the rules on file, no part of this pipe is ${name}’s to maintain.`,
    some: (name, places) =>
      `By the rules on file, this part is ${name}’s to maintain: ${places} ft from the main.`,
    unclear: (places) => `It is not clear yet for: ${places} ft.`,
  },
  no: {
    asked: "What if someone says no?",
    said: "Anyone may say no. The office says what can go ahead without them, and the authority’s rules say what can follow. Ask for these steps in writing.",
    notSaid: "Anyone may say no. What follows is not in the rules on file; the authority can say.",
  },
  when: {
    asked: "When, and when can’t I use my drains?",
    none: "No day is set for the work yet.",
    begins: (day) => `Work is planned to begin ${day}.`,
    noPause: "No drain shutdown is planned yet; you will be told ahead of time.",
    pause: (day) =>
      `Please use no drain on ${day} during the hours that you will be given; tell us now if someone at your address cannot do without.`,
  },
};

const ES: MeetingWords = {
  seen: {
    asked: "¿Qué vio la cámara?",
    none: "Todavía no hay ninguna inspección con cámara en el expediente.",
    live: (count) =>
      count === 1
        ? "Hay 1 conexión en uso en la tubería compartida."
        : `Hay ${count} conexiones en uso en la tubería compartida.`,
    open: (count) =>
      count === 1
        ? "De 1 de ellas todavía no se sabe de quién es."
        : `De ${count} de ellas todavía no se sabe de quién son.`,
    faults: (count) =>
      count === 0
        ? "No se anotó ninguna rotura ni obstrucción."
        : `${count === 1 ? "Se anotó 1 rotura u obstrucción" : `Se anotaron ${count} roturas u obstrucciones`}; la carta las detalla.`,
  },
  why: {
    asked: "¿Por qué yo?",
    answer:
      "Porque su desagüe llega a esta tubería, o puede llegar, o porque la tubería cruza su lote. Mientras no se demuestre que su desagüe llega a ella, nadie le pide que pague.",
  },
  cost: {
    asked: "¿Cuánto cuesta?",
    none: "Todavía no se ha elegido cómo repartir el costo, así que nadie tiene una cantidad.",
    total: (total, rule) =>
      `${total} en total, repartido con esta regla: ${rule}. Su propia cantidad está en su propio sobre, con la explicación del cálculo.`,
  },
  authority: {
    asked: "¿Le toca a la ciudad?",
    unknown:
      "Todavía no está resuelto: no se ha aplicado a esta tubería la regla de ninguna autoridad.",
    none: (name) =>
      `Según las reglas del expediente, a ${name} no le toca mantener ninguna parte de esta tubería.`,
    some: (name, places) =>
      `Según las reglas del expediente, a ${name} le toca mantener esta parte: de ${places} pies desde la tubería principal.`,
    unclear: (places) => `Todavía no está claro para: ${places} pies.`,
  },
  no: {
    asked: "¿Y si alguien dice que no?",
    said: "Cualquiera puede decir que no. La oficina le dirá qué puede hacerse sin esa persona, y las reglas de la autoridad dicen qué puede seguir. Pida estos pasos por escrito.",
    notSaid:
      "Cualquiera puede decir que no. Lo que sigue no está en las reglas del expediente; la autoridad puede decirlo.",
  },
  when: {
    asked: "¿Cuándo será, y cuándo no puedo usar los desagües?",
    none: "Todavía no hay fecha para el trabajo.",
    begins: (day) => `El trabajo está previsto a partir del ${day}.`,
    noPause: "No hay fecha para dejar de usar los desagües; se le avisará antes.",
    pause: (day) =>
      `Por favor, no use ningún desagüe el ${day} en el horario que se le indicará; avísenos ya si alguien en su domicilio no puede prescindir de ellos.`,
  },
};

export const MEETING_WORDS: Record<Language, MeetingWords> = { en: EN, es: ES };
