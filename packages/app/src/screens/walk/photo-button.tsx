import type { ChangeEvent } from "react";
import "../add/add.css";

interface PhotoButtonProps {
  readonly label: string;
  readonly className?: string;
  readonly onPhoto: (file: File) => void;
}

/** The device's own camera or picker: robust everywhere, and no screen of ours to learn. */
export function PhotoButton({ label, className, onPhoto }: PhotoButtonProps) {
  const take = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.currentTarget.files?.[0];
    if (file !== undefined) onPhoto(file);
    event.currentTarget.value = "";
  };
  return (
    <label className={className === undefined ? "file-button" : `file-button ${className}`}>
      {label}
      <input type="file" accept="image/*" capture="environment" onChange={take} />
    </label>
  );
}
