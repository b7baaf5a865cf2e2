import type { Certificate } from "#lib/domain/paper/certificate.ts";
import styles from "./certificate.module.css";

/** What is kept of a signature, as a list to read and to print. */
export function CertificateList({ certificate }: { readonly certificate: Certificate }) {
  return (
    <div className="stack-tight" lang={certificate.language}>
      <dl className={`facts ${styles["certificate"]}`}>
        {certificate.rows.map(({ label, lines }) => (
          <div key={label} className={styles["row"]}>
            <dt>{label}</dt>
            <dd>
              {lines.map((line, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the lines never move
                <span key={index}>{line}</span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      <p className="small muted">{certificate.note}</p>
    </div>
  );
}
