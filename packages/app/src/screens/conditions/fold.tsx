import { type ReactNode, useState } from "react";

interface FoldProps {
  readonly title: string;
  /** Whether it begins open; from then on it is the person's to open and close. */
  readonly opens: boolean;
  readonly children: ReactNode;
}

/** A part of the sheet that folds away under its heading. */
export function Fold({ title, opens, children }: FoldProps) {
  const [open, setOpen] = useState(opens);
  return (
    <details className="cond-part" open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {children}
    </details>
  );
}
