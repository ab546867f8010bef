import { type BookResult, readBook } from "@witnessmark/book";

export interface ReadRequest {
  readonly text: string;
  readonly fileName: string;
}
export type ReadAnswer = { readonly result: BookResult } | { readonly failure: string };

addEventListener("message", (event: MessageEvent<ReadRequest>) => {
  readBook(event.data.text, event.data.fileName).then(
    (result) => postMessage({ result } satisfies ReadAnswer),
    (error: unknown) => {
      const failure = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      postMessage({ failure } satisfies ReadAnswer);
    },
  );
});
