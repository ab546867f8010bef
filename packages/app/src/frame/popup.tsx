import { type ReactNode, type RefObject, useId, useLayoutEffect, useRef } from "react";
import "./popup.css";

interface PopupProps {
  readonly title: string;
  readonly onClose: () => void;
  /** Where it begins; without one, at its way out. */
  readonly first?: RefObject<HTMLElement | null>;
  readonly children: ReactNode;
}

/** A sheet over the sheet: the native dialog, so that focus, Escape and the screen reader behave as they should. */
export function Popup({ title, onClose, first, children }: PopupProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  // closed while it still stands in the page: only then does the browser give the focus back to what opened it
  useLayoutEffect(() => {
    const dialog = ref.current;
    if (dialog === null) return;
    dialog.showModal();
    first?.current?.focus();
    return () => dialog.close();
  }, [first]);
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
