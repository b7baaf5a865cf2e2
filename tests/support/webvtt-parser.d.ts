declare module "webvtt-parser" {
  interface Parsed {
    readonly cues: readonly { readonly startTime: number; readonly endTime: number }[];
    readonly errors: readonly { readonly message: string; readonly line: number }[];
  }
  const webvtt: {
    readonly WebVTTParser: new () => { parse(text: string, mode: string): Parsed };
  };
  export = webvtt;
}
