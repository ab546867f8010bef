/** Base64url without padding (RFC 4648 §5). */
export function toBase64url(bytes: Uint8Array): string {
  return btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replace(/=+$/, "");
}

/**
 * The bytes of base64url text, or `undefined` when it is not the one text for its bytes: the last figure may carry
 * bits that no byte uses, and a change in those must not pass unseen.
 */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return undefined;
  const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  const bytes = Uint8Array.from(binary, (char) => char.charCodeAt(0));
  return toBase64url(bytes) === text ? bytes : undefined;
}
