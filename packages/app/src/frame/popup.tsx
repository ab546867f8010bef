import { type ReactNode, useEffect, useId, useRef } from "react";
import "./popup.css";

interface PopupProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A sheet over the sheet: the native dialog, so that focus, Escape and the screen reader behave as they should. */
export function Popup({ title, onClose, children }: PopupProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    if (dialog === null) return;
    dialog.showModal();
    return () => dialog.close();
  }, []);
  return (
    <dialog ref={ref} className="popup" aria-labelledby={id} onClose={onClose} onCancel={onClose}>
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" className="button" onClick={onClose}>
          Close
        </button>
      </header>
      {children}
    </dialog>
  );
}
