/** One message to one party, ready to go. */
export interface MailMessage {
  readonly messageId: string;
  readonly from: { readonly name: string; readonly address: string };
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  /** Papers that go with it. */
  readonly attachments: readonly MailAttachment[];
  /** When it is sent. */
  readonly date: Date;
}

interface MailAttachment {
  readonly name: string;
  readonly bytes: Uint8Array;
}
