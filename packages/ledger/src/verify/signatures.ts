import type { KnownEvent, LedgerEvent } from "../event.ts";
import { type LedgerFault, nameOf, spoken } from "../fault.ts";
import { isKnownEvent } from "../known.ts";
import { importPublicKey, mustBeSigned, verify } from "../signature.ts";
import type { Placed } from "./placed.ts";

type Introduction = Extract<KnownEvent, { type: "device.introduced" }>;

/** How a device's signatures are to be judged from some event on. */
type Judge =
  | { readonly kind: "not-introduced" }
  | { readonly kind: "no-key"; readonly why: string }
  | { readonly kind: "key"; readonly key: CryptoKey };

const isIntroduction = (event: LedgerEvent): event is Introduction =>
  event.type === "device.introduced" && isKnownEvent(event);

/**
 * Introduction and signatures of one device's events, which come ordered by deviceSeq. The key is the one that the
 * device introduced last before the event.
 */
export async function signatureFaults(chain: readonly Placed[]): Promise<readonly LedgerFault[]> {
  const faults: LedgerFault[] = [];
  let judge: Judge = { kind: "not-introduced" };
  const [first] = chain;
  if (first !== undefined && !isIntroduction(first.event)) {
    const says = `device ${first.event.device} was never introduced: its first event here is ${spoken(first.event)}, expected device.introduced`;
    faults.push({ code: "device-unknown", ...nameOf(first.event, first.line), says });
  }
  for (const { event, line } of chain) {
    if (isIntroduction(event)) judge = await judgeOf(event);
    const fault = await signatureFault(event, judge);
    if (fault !== null) faults.push({ ...fault, ...nameOf(event, line) });
  }
  return faults;
}

async function judgeOf({ body }: Introduction): Promise<Judge> {
  if (body.key.kind === "none")
    return { kind: "no-key", why: `the device could keep no key: ${body.key.why}` };
  try {
    return { kind: "key", key: await importPublicKey(body.key.publicKey) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { kind: "no-key", why: `the key it introduced is none: ${reason}` };
  }
}

async function signatureFault(
  event: LedgerEvent,
  judge: Judge,
): Promise<Pick<LedgerFault, "code" | "says"> | null> {
  const { signature } = event;
  if (signature === undefined) {
    if (judge.kind !== "key" || !mustBeSigned(event.type)) return null;
    return {
      code: "signature-missing",
      says: `${spoken(event)} is not signed, though its device has a key`,
    };
  }
  switch (judge.kind) {
    case "not-introduced":
      return {
        code: "key-unknown",
        says: `${spoken(event)} is signed by a device that was not introduced before; its signature cannot be judged`,
      };
    case "no-key":
      return { code: "key-unknown", says: `${spoken(event)} is signed, but ${judge.why}` };
    case "key":
      if (await verify(judge.key, event.hash, signature)) return null;
      return {
        code: "signature-wrong",
        says: `${spoken(event)} carries a signature that is not its device's over this event`,
      };
    default:
      return judge satisfies never;
  }
}
