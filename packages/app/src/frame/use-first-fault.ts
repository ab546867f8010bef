import { type RefObject, useEffect, useRef } from "react";

/**
 * Puts the cursor into the first field of a form that cannot be taken: it may be far out of sight.
 *
 * @param asked how often the form was sent and not taken
 */
export function useFirstFault(asked: number): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (asked > 0) form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [asked]);
  return form;
}
