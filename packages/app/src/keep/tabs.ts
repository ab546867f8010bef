/** What one tab tells the others on this phone. */
export type TabMessage =
  /** Events, outbox or entries kept apart of these aircraft have changed in the storage. */
  | { readonly kind: "aircraft"; readonly aircraft: readonly string[] }
  /** People, person in hand, photos or the outcome of an exchange have changed. */
  | { readonly kind: "settings" };

export interface Tabs {
  tell(message: TabMessage): void;
  close(): void;
}

/** Where there is no BroadcastChannel a tab sees the others' work when it is next shown. */
export function joinTabs(name: string, onMessage: (message: TabMessage) => void): Tabs {
  if (typeof BroadcastChannel === "undefined") return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel(name);
  // Only pages of this app, of this origin, speak here.
  channel.onmessage = (event: MessageEvent<TabMessage>) => onMessage(event.data);
  return { tell: (message) => channel.postMessage(message), close: () => channel.close() };
}
