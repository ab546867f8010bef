/** A page that is not shown paints nothing: nobody waits for it longer than this. */
const LONGEST_ms = 100;

/** Resolves once the next frame has been painted. */
export function painted(): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, LONGEST_ms);
    requestAnimationFrame(() => {
      // a message sent in a frame is heard once that frame has been painted
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        port1.close();
        // and what else waited for that frame has its turn before the work that this one holds back
        setTimeout(done, 0);
      };
      port2.postMessage(null);
    });
  });
}
