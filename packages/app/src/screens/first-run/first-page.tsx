import type { ReactNode } from "react";
import { Logo } from "../../marks/logo.tsx";

/**
 * The first page that anyone sees. Its words stand in index.html too, put there by the build, so that they are read
 * while the program is still on its way; its styles are imported by those who show it.
 *
 * @param children where one says who one is; nothing before the program is there
 */
export function FirstPage({ children }: { readonly children?: ReactNode }) {
  return (
    <div className="frame first-run">
      <main>
        <div className="first-says">
          <Logo />
          <p className="lead">
            Walk round an aircraft before flight, miss nothing, and sign a decision that others can trust.
          </p>
        </div>
        <div className="first-asks">
          <h1 className="heading">Who are you?</h1>
          <p className="hint">
            Your name or initials stand beside everything you see and sign. More people can share this device
            later.
          </p>
          {children ?? <div className="form-room" />}
        </div>
        <p className="fine">
          Witnessmark advises; the pilot in command decides. The approved flight manual, the rules where you
          fly and licensed mechanics come first.
        </p>
      </main>
    </div>
  );
}
