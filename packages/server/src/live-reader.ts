import type { LiveMessage } from "./protocol.ts";
import { LiveMessageSchema } from "./schemas.ts";

/** The server sends something every quarter of a minute: a line silent for this long is dead, though nobody said so. */
const SILENCE_MS = 45_000;

/**
 * Reads server-sent events from a response until it ends. Only events named `head` matter here.
 *
 * @source WHATWG HTML, section 9.2.6: fields, lines, an empty line ends an event
 * @throws {Error} when the line breaks or falls silent
 */
export async function readLive(
  response: Pick<Response, "body">,
  onHead: (message: LiveMessage) => void,
): Promise<void> {
  if (response.body === null) return;
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let unread = "";
  try {
    for (;;) {
      const { done, value } = await beforeSilence(reader.read());
      if (done) return;
      unread += value;
      const events = unread.split(/\r?\n\r?\n/);
      unread = events.pop() ?? "";
      for (const event of events) {
        const message = messageOf(event);
        if (message !== null) onHead(message);
      }
    }
  } finally {
    await reader.cancel().catch(() => undefined); // it may be broken already; that is told by what was thrown
  }
}

function messageOf(event: string): LiveMessage | null {
  const lines = event.split(/\r?\n/);
  if (!lines.includes("event: head")) return null;
  const data = lines.filter((line) => line.startsWith("data: ")).map((line) => line.slice("data: ".length));
  const parsed = LiveMessageSchema.safeParse(JSON.parse(data.join("\n")));
  return parsed.success ? parsed.data : null;
}

async function beforeSilence<T>(reading: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error("The live line fell silent.")), SILENCE_MS);
  });
  try {
    return await Promise.race([reading, silence]);
  } finally {
    clearTimeout(timer);
  }
}
