declare module "hoodiecrow-imap" {
  import type { Server } from "node:net";

  interface Box {
    readonly messages: readonly { readonly raw: string; readonly internaldate?: string }[];
    readonly uidvalidity?: number;
    readonly uidnext?: number;
  }

  interface ImapServer {
    readonly server: Server;
    listen(port: number, host: string, done: () => void): void;
    close(done: () => void): void;
    appendMessage(
      folder: string,
      flags: readonly string[],
      date: string | false,
      raw: string,
    ): void;
    readonly folderCache: Record<
      string,
      { messages: { flags: string[]; raw: string; uid: number }[]; uidvalidity: number }
    >;
  }

  function hoodiecrow(options: {
    readonly plugins?: readonly string[];
    readonly users?: Record<string, { readonly password: string }>;
    readonly storage: Record<string, Box>;
  }): ImapServer;
  export = hoodiecrow;
}
