import { openPhone, type Phone, type PhoneGiven } from "./browser.ts";
import { type RunningServer, type ServerGiven, startServer } from "./server.ts";

/** One server, and the phones that were opened on it. */
export interface Scene {
  readonly server: RunningServer;
  phone(given?: PhoneGiven): Promise<Phone>;
  /** Kills a phone's browser and switches the same phone on again. */
  killAndReopen(phone: Phone): Promise<Phone>;
  /** Starts the server again, after it was stopped or killed, on the same port and the same data. */
  serverAgain(changed?: { readonly appDirectory?: string }): Promise<void>;
  /** Takes everything down. Hand it back from `beforeAll`. */
  end(): Promise<void>;
}

export async function openScene(given: ServerGiven = {}): Promise<Scene> {
  let server = await startServer(given);
  const phones = new Set<Phone>();
  return {
    get server() {
      return server;
    },
    async phone(phoneGiven) {
      const phone = await openPhone(server.url, phoneGiven);
      phones.add(phone);
      return phone;
    },
    async killAndReopen(phone) {
      await phone.kill();
      phones.delete(phone);
      const again = await phone.reopen();
      phones.add(again);
      return again;
    },
    async serverAgain(changed) {
      server = await server.again(changed);
    },
    async end() {
      for (const phone of phones) await phone.close();
      await server.remove();
    },
  };
}
