import "../../no-eval.ts";
import { type BookResult, readBook } from "@witnessmark/book";

export interface ReadRequest {
  readonly request: number;
  readonly text: string;
  readonly fileName: string;
}
export type ReadAnswer = { readonly request: number } & (
  | { readonly result: BookResult }
  | { readonly failure: string }
);

addEventListener("message", ({ data: { request, text, fileName } }: MessageEvent<ReadRequest>) => {
  readBook(text, fileName).then(
    (result) => postMessage({ request, result } satisfies ReadAnswer),
    (error: unknown) => {
      const failure = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      postMessage({ request, failure } satisfies ReadAnswer);
    },
  );
});
