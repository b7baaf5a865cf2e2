// The words of notices about one day, of change orders and of bills, in both languages.

export const NOTICE_EN = {
  back: {
    lead: (place: string, day: string, time: string) =>
      `You may use the drains at ${place} again as of ${day}, ${time}.`,
    opening: "The drain shutdown on the shared sewer is over.",
    first: "First use",
    firstLines: [
      "Run water at one sink and see that it goes down before you use the rest.",
      "If water stands, comes up or gurgles at any drain, stop at once and call us.",
      "If our crew told you otherwise today, do as they said and call us.",
    ],
    from: "Drains back on since",
    choices: [
      "The drains at this address work.",
      "A drain does not run or backs up; please call me.",
    ],
  },
  meeting: {
    lead: (day: string, hours: string, where: string) =>
      `You are invited to a meeting on ${day}${hours === "" ? "" : `, ${hours}`}${where === "" ? "" : `, ${where}`}.`,
    opening: (pipe: string) =>
      `The owners on ${pipe} are asked to come together about it. Nothing is decided or signed for anyone who is not there.`,
    day: "Day",
    hours: "Hours",
    where: "Place",
    about: "What will be talked about",
    aboutLines: [
      "what the camera saw and what the permit record shows;",
      "what is not known yet;",
      "the work, what it costs and how it may be shared;",
      "your questions.",
    ],
    bring: "Please bring any permit, drawing or bill for your drain that you have.",
    private: "Your own amount is in your own letter and is not read out to others.",
    choices: [
      "I will come.",
      "Someone will come for me (write the name below).",
      "I can’t come; please call me.",
    ],
  },
  landlord: {
    lead: (place: string, day: string, hours: string) =>
      `We plan to enter ${place} on ${day}${hours === "" ? "" : `, ${hours}`}.`,
    opening: (office: string) =>
      `${office} is the drain contractor. This notice is for the owner or manager to sign and hand to the people who live or work here.`,
    day: "Day",
    hours: "Hours",
    who: "Who comes",
    whoWords: (office: string) => `people of ${office}; they will show identification if asked`,
    why: "Why",
    whyWords: "to find out where the drains of this address run",
    owner: "Owner of the property",
    agreed: (day: string) => `The owner’s consent to enter, of ${day}, is on file with us.`,
    notAgreed: "The owner’s consent to enter is not on file with us yet.",
    ask: "What we ask",
    asks: [
      "An adult should be there, or tell us how to get in.",
      "If the day or hours do not suit you, call us or your landlord before then.",
      "Tell us of pets, alarms, or anyone who is ill or cannot be without water.",
    ],
    sign: "For the owner or manager to sign",
    signed: "Name and signature: ________________________________________   Date: ______________",
  },
  parking: {
    lead: (where: string, day: string, hours: string) =>
      `Please keep ${where} clear on ${day}${hours === "" ? "" : `, ${hours}`}.`,
    leadDays: (where: string, first: string, last: string) =>
      `Please keep ${where} clear from ${first} through ${last}.`,
    opening: "The space is needed for the work on the shared sewer.",
    where: "Which part of the street",
    day: "Day",
    hours: "Hours",
    ask: "What we ask",
    asks: [
      "Please move cars, trailers and bins before then.",
      "Please tell visitors and deliveries.",
      "If you need to be let out by car or have a ramp or van brought to the door, call us before then.",
    ],
    choices: [
      "I have read this notice.",
      "I need a car at the door during that time; please call me.",
    ],
  },
  change: {
    lead: (number: number, by: string) =>
      `Please tell us${by} whether you agree to change order No. ${number}.`,
    openingAgreed: (number: number) =>
      `The work on the shared sewer has changed. This is change order No. ${number}, agreed.`,
    openingRefused: (number: number) =>
      `Change order No. ${number} for the work on the shared sewer was not agreed. The work stays as it was.`,
    none: "No change order is on file.",
    why: "Why",
    added: "Added",
    dropped: "Left out",
    head: ["", "Before", "After"],
    total: "All work together",
    share: (place: string) => `Share of ${place}`,
    unknown: "What it does to your share can’t be calculated yet.",
    ask: "A consent that you gave to an earlier amount does not cover a new one. You will get the new split to answer.",
    choices: [
      "I agree to this change.",
      "I have a question; please call me.",
      "I do not agree; my reasons are below.",
    ],
    choicesTold: ["I have read this letter.", "I have a question; please call me."],
  },
  cover: {
    lead: (place: string, amount: string, day: string) =>
      `Your invoice for ${place} is enclosed: ${amount}, due on ${day}.`,
    leadPast: (place: string, amount: string, day: string) =>
      `Your invoice for ${place} is enclosed: ${amount}, which was due on ${day}.`,
    leadMany: (place: string, amount: string, day: string) =>
      `Your invoices for ${place} are enclosed: ${amount} together. The first is due on ${day}.`,
    leadManyPast: (place: string, amount: string, day: string) =>
      `Your invoices for ${place} are enclosed: ${amount} together. The first was due on ${day}.`,
    none: "No invoice with a balance due is on file.",
    opening: "It is your share of the work on the shared sewer. No other owner’s amount is in it.",
    head: ["Invoice", "Date", "Due", "Balance due"],
    number: (number: number) => `No. ${number}`,
    total: "Total",
    dispute:
      "If you think an amount is wrong, write to us before the due date: which one, and why.",
    disputePast: "If you think an amount is wrong, write to us: which one, and why.",
    choices: (amount: string) => [
      `I will pay ${amount}.`,
      "I would like to pay in installments; please call me.",
      "I think an amount is wrong; my reasons are below.",
    ],
  },
};

export type NoticeWords = typeof NOTICE_EN;

export const NOTICE_ES: NoticeWords = {
  back: {
    lead: (place, day, time) => `Ya puede usar los desagües de ${place}, desde el ${day}, ${time}.`,
    opening: "Ya terminó el tiempo en que no se debían usar los desagües de la tubería compartida.",
    first: "Al usarlos por primera vez",
    firstLines: [
      "Abra el agua en un solo lavabo y vea que se va, antes de usar los demás desagües.",
      "Si el agua no se va, sube o hace ruido en algún desagüe, deje de usarla y llámenos.",
      "Si hoy nuestra cuadrilla le dijo otra cosa, haga lo que le dijeron y llámenos.",
    ],
    from: "Se pueden usar desde",
    choices: [
      "Los desagües de esta dirección funcionan.",
      "Un desagüe no corre o se devuelve; llámeme, por favor.",
    ],
  },
  meeting: {
    lead: (day, hours, where) =>
      `Le invitamos a una reunión el ${day}${hours === "" ? "" : `, ${hours}`}${where === "" ? "" : `, ${where}`}.`,
    opening: (pipe) =>
      `Se pide a los propietarios que comparten ${pipe} que se reúnan para hablar de ella. No se decide ni se firma nada por quien no esté presente.`,
    day: "Día",
    hours: "Horas",
    where: "Lugar",
    about: "De qué se hablará",
    aboutLines: [
      "lo que vio la cámara y lo que dice el expediente de permisos;",
      "lo que todavía no se sabe;",
      "la obra, su costo y cómo se puede repartir;",
      "sus preguntas.",
    ],
    bring: "Traiga, por favor, los permisos, planos o facturas de su desagüe que tenga.",
    private: "Su propia parte está en su carta y no se lee en voz alta ante los demás.",
    choices: [
      "Iré.",
      "Irá otra persona por mí (escriba el nombre abajo).",
      "No puedo ir; llámeme, por favor.",
    ],
  },
  landlord: {
    lead: (place, day, hours) =>
      `Pensamos entrar en ${place} el ${day}${hours === "" ? "" : `, ${hours}`}.`,
    opening: (office) =>
      `${office} es el contratista de desagües. Este aviso es para que el propietario o el administrador lo firme y lo entregue a quienes viven o trabajan aquí.`,
    day: "Día",
    hours: "Horas",
    who: "Quién viene",
    whoWords: (office) => `personal de ${office}; se identificará si se le pide`,
    why: "Para qué",
    whyWords: "para saber adónde van los desagües de este lugar",
    owner: "Propietario",
    agreed: (day) =>
      `Tenemos en nuestros archivos el permiso del propietario para entrar, del ${day}.`,
    notAgreed: "Todavía no tenemos en nuestros archivos el permiso del propietario para entrar.",
    ask: "Lo que le pedimos",
    asks: [
      "Debe haber una persona adulta en el lugar, o díganos cómo entrar.",
      "Si el día o la hora no le convienen, llámenos o llame a su arrendador antes.",
      "Díganos si hay animales, alarmas, personas enfermas o alguien que no pueda estar sin agua.",
    ],
    sign: "Firma del propietario o administrador",
    signed: "Nombre y firma: ________________________________________   Fecha: ______________",
  },
  parking: {
    lead: (where, day, hours) =>
      `Por favor, deje libre ${where} el ${day}${hours === "" ? "" : `, ${hours}`}.`,
    leadDays: (where, first, last) =>
      `Por favor, deje libre ${where} desde el ${first} hasta el ${last}.`,
    opening: "Ese espacio se necesita para la obra del desagüe compartido.",
    where: "Qué parte de la calle",
    day: "Día",
    hours: "Horas",
    ask: "Lo que le pedimos",
    asks: [
      "Retire antes los autos, remolques y contenedores.",
      "Avise a sus visitas y a quienes le hagan entregas.",
      "Si necesita salir en auto, o una rampa o camioneta junto a la puerta, llámenos antes.",
    ],
    choices: [
      "He leído este aviso.",
      "Necesito un auto junto a la puerta durante ese tiempo; llámeme, por favor.",
    ],
  },
  change: {
    lead: (number, by) =>
      `Díganos, por favor,${by} si está de acuerdo con la orden de cambio núm. ${number}.`,
    openingAgreed: (number) =>
      `La obra del desagüe compartido cambió. Esta es la orden de cambio núm. ${number}, ya acordada.`,
    openingRefused: (number) =>
      `La orden de cambio núm. ${number} de la obra del desagüe compartido no se acordó. La obra queda como estaba.`,
    none: "No hay ninguna orden de cambio en nuestros archivos.",
    why: "Por qué",
    added: "Se agrega",
    dropped: "Se quita",
    head: ["", "Antes", "Después"],
    total: "Toda la obra",
    share: (place) => `Parte de ${place}`,
    unknown: "Todavía no se puede calcular qué cambia en su parte.",
    ask: "El consentimiento que dio a un monto anterior no vale para uno nuevo. Recibirá el nuevo reparto para contestarlo.",
    choices: [
      "Estoy de acuerdo con este cambio.",
      "Tengo una pregunta; llámeme, por favor.",
      "No estoy de acuerdo; mis razones están abajo.",
    ],
    choicesTold: ["He leído esta carta.", "Tengo una pregunta; llámeme, por favor."],
  },
  cover: {
    lead: (place, amount, day) =>
      `Adjuntamos su factura por ${place}: ${amount}, con vencimiento el ${day}.`,
    leadPast: (place, amount, day) =>
      `Adjuntamos su factura por ${place}: ${amount}, que venció el ${day}.`,
    leadMany: (place, amount, day) =>
      `Adjuntamos sus facturas por ${place}: ${amount} en total. La primera vence el ${day}.`,
    leadManyPast: (place, amount, day) =>
      `Adjuntamos sus facturas por ${place}: ${amount} en total. La primera venció el ${day}.`,
    none: "No hay en nuestros archivos ninguna factura con saldo pendiente.",
    opening:
      "Es su parte de la obra del desagüe compartido. No incluye el monto de ningún otro propietario.",
    head: ["Factura", "Fecha", "Vence", "Saldo"],
    number: (number) => `Núm. ${number}`,
    total: "Total de las facturas",
    dispute: "Si cree que un monto está mal, escríbanos antes del vencimiento: cuál es y por qué.",
    disputePast: "Si cree que un monto está mal, escríbanos: cuál es y por qué.",
    choices: (amount) => [
      `Voy a pagar ${amount}.`,
      "Quisiera pagar a plazos; llámeme, por favor.",
      "Creo que un monto está mal; mis razones están abajo.",
    ],
  },
};
