/** What a worker is sent: its number comes back with the answer. */
interface Asked<Question> {
  readonly request: number;
  readonly question: Question;
}
type Answered<Answer> = { readonly request: number } & (
  | { readonly answer: Answer }
  | { readonly failure: Failure }
);

/** An error as it crosses from a worker: its name, its sentence and what else it says of itself. */
export interface Failure {
  readonly name: string;
  readonly message: string;
  readonly [detail: string]: unknown;
}

export interface WorkerParts {
  readonly start: () => Worker;
  /** The error for every question that waits when the worker breaks down or never started. */
  readonly broke: (detail: string) => Error;
  /** The error for a question that the worker could not answer. */
  readonly failed: (failure: Failure) => Error;
  /** How long a worker with nothing to do is kept, for its memory is better given back; left out, for good. */
  readonly idle_ms?: number;
}

/** Asks a worker away from the screen, as many questions at once as one likes. It is started by the first of them. */
export function askWorker<Question, Answer>({
  start,
  broke,
  failed,
  idle_ms,
}: WorkerParts): (question: Question) => Promise<Answer> {
  let worker: Worker | null = null;
  let idle: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const waiting = new Map<number, PromiseWithResolvers<Answer>>();

  function stop(): void {
    worker?.terminate();
    worker = null;
  }

  function started(): Worker {
    const fresh = start();
    fresh.addEventListener("message", ({ data }: MessageEvent<Answered<Answer>>) => {
      const one = waiting.get(data.request);
      waiting.delete(data.request);
      if ("answer" in data) one?.resolve(data.answer);
      else one?.reject(failed(data.failure));
      if (waiting.size === 0 && idle_ms !== undefined) idle = setTimeout(stop, idle_ms);
    });
    fresh.addEventListener("error", ({ message }) => {
      for (const one of waiting.values()) one.reject(broke(message));
      waiting.clear();
      stop();
    });
    return fresh;
  }

  return (question) => {
    clearTimeout(idle);
    const request = ++asked;
    const one = Promise.withResolvers<Answer>();
    waiting.set(request, one);
    worker ??= started();
    worker.postMessage({ request, question } satisfies Asked<Question>);
    return one.promise;
  };
}

/** The worker's side of `askWorker`: answers whatever it is asked. */
export function answerQuestions<Question, Answer>(answer: (question: Question) => Promise<Answer>): void {
  addEventListener("message", ({ data: { request, question } }: MessageEvent<Asked<Question>>) => {
    answer(question).then(
      (found) => postMessage({ request, answer: found } satisfies Answered<Answer>),
      (error: unknown) => postMessage({ request, failure: failureOf(error) } satisfies Answered<Answer>),
    );
  });
}

const failureOf = (error: unknown): Failure =>
  error instanceof Error
    ? { ...error, name: error.name, message: error.message }
    : { name: "Error", message: String(error) };
