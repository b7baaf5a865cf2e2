import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Meeting, MeetingWish } from "#lib/domain/facts/meeting.ts";
import { MEETING_WISHES } from "#lib/domain/facts/meeting.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import { meetingGuests, meetingQuestions } from "#lib/domain/paper/meeting-sheet.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { letterTime } from "#lib/domain/time/letter-day.ts";
import { propertyName } from "../../names.ts";
import styles from "./meeting.module.css";

const SHEET_WORDS: Record<
  Language,
  {
    readonly title: string;
    readonly signIn: string;
    readonly name: string;
    readonly place: string;
    readonly signature: string;
    readonly mark: string;
    readonly wishes: Record<MeetingWish, string>;
    readonly foot: string;
  }
> = {
  en: {
    title: "The shared sewer line: questions and answers",
    signIn: "Who is here",
    name: "Name",
    place: "For",
    signature: "Signature",
    mark: "Please mark what you would like by letter.",
    wishes: {
      findings: "What was found",
      "own-figure": "My own share",
      "test-here": "A test at my place",
      "let-in": "Consent to enter",
      "sign-agreement": "The agreement",
    },
    foot: "Signing in says only that you were here. Your own figure is in your own envelope. This is not legal advice.",
  },
  es: {
    title: "La tubería de desagüe compartida: preguntas y respuestas",
    signIn: "Quiénes están presentes",
    name: "Nombre",
    place: "Por",
    signature: "Firma",
    mark: "Marque lo que desea recibir por carta.",
    wishes: {
      findings: "Lo que se encontró",
      "own-figure": "Mi propia parte",
      "test-here": "Una prueba en mi domicilio",
      "let-in": "Permiso para entrar",
      "sign-agreement": "El acuerdo",
    },
    foot: "Firmar aquí solo indica que usted estuvo presente. Su propia cantidad está en su propio sobre. Esto no es asesoría legal.",
  },
};

interface SheetProps {
  readonly file: LineFile;
  readonly report: Report;
  readonly meeting: Meeting;
  readonly office: Office | null;
  readonly language: Language;
}

/** One page for the table: six questions answered from the file, and who is there. */
export function MeetingSheet({ file, report, meeting, office, language }: SheetProps) {
  const words = SHEET_WORDS[language];
  const hours = [meeting.at, meeting.until]
    .filter((time) => time !== "")
    .map((time) => letterTime(time, language));
  return (
    <article lang={language} className={styles["sheet"]} aria-label={words.title}>
      <header>
        <h2>{words.title}</h2>
        <p>
          {file.line.name}. {LETTER_WORDS[language].weekday(meeting.on)}
          {hours.length === 0 ? "" : `, ${hours.join("–")}`}
          {meeting.place === "" ? "" : `. ${meeting.place}`}
          {office === null ? "" : `. ${office.name}, ${formatPhone(office.phone)}`}
        </p>
      </header>
      <dl className={styles["questions"]}>
        {meetingQuestions(file, report, language).map(({ asked, answer }) => (
          <div key={asked}>
            <dt>{asked}</dt>
            <dd>{answer}</dd>
          </div>
        ))}
      </dl>
      <h3>{words.signIn}</h3>
      <p>{words.mark}</p>
      <div className={styles["wide"]}>
        <table className="plain">
          <thead>
            <tr>
              <th scope="col">{words.name}</th>
              <th scope="col">{words.place}</th>
              {MEETING_WISHES.map((wish) => (
                <th key={wish} scope="col" className={styles["mark"]}>
                  {words.wishes[wish]}
                </th>
              ))}
              <th scope="col">{words.signature}</th>
            </tr>
          </thead>
          <tbody>
            {meetingGuests(file).map(({ party, propertyId }) => (
              <tr key={`${party.id} ${propertyId}`}>
                <th scope="row">{party.name}</th>
                <td>{propertyName(file, propertyId)}</td>
                {MEETING_WISHES.map((wish) => (
                  <td key={wish} className={styles["mark"]}>
                    <span aria-hidden="true">☐</span>
                  </td>
                ))}
                <td className={styles["signature"]} />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="small">{words.foot}</p>
    </article>
  );
}
