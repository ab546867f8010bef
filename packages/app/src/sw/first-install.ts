/** What of a registration says how it stands with the first keeping of the app's files. */
export type Registration = Pick<ServiceWorkerRegistration, "active" | "installing" | "waiting">;

/**
 * Calls back when a first visit could not keep the app's files: then nothing opens without a net. A newer version that
 * could not be kept is none of this; the old one goes on working.
 */
export function whenFirstFails(registration: Registration, onFailed: () => void): void {
  if (registration.active !== null || registration.waiting !== null) return;
  const worker = registration.installing;
  if (worker === null) {
    onFailed(); // it was given up before anybody looked
    return;
  }
  worker.addEventListener("statechange", () => {
    if (worker.state === "redundant" && registration.active === null) onFailed();
  });
}
