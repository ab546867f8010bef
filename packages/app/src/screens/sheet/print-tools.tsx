import type { ReactNode } from "react";

interface PrintToolsProps {
  /** The address of the screen one came from. */
  readonly back: string;
  readonly backTo: string;
  /** What else can be done with the sheet. */
  readonly children?: ReactNode;
}

/** The row over everything that is made for paper: back, what else there is, Print. It is not printed itself. */
export function PrintTools({ back, backTo, children }: PrintToolsProps) {
  return (
    <div className="sheet-tools">
      <a className="back-row" href={back}>
        {backTo}
      </a>
      {children}
      <button type="button" className="button filled" onClick={() => window.print()}>
        Print
      </button>
    </div>
  );
}
