const FILE_KEPT_MS = 60_000;

/** Saves a text, or what is a file already, as a file of this device. */
export function saveFile(content: string | Blob, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), FILE_KEPT_MS);
}
